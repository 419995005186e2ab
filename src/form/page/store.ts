/** Runs that are not handed in yet, kept in the browser: a database, else the plain store of the page. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Stamps } from '../clock.ts'
import type { RunState } from '../state.ts'

export type KeptRun = {
  readonly key: string
  readonly card: string
  readonly title: string
  readonly state: RunState
  readonly stamps: Stamps
  /** ms since 1970. */
  readonly changed: number
  /** When it was last handed in; null: never. */
  readonly handed: number | null
  /** Digest of the card that it was begun with. */
  readonly begunWith: string
  /** Counts up with each writing: two tabs with one run must not overwrite each other unseen. */
  readonly version: number
}

interface Schema extends DBSchema {
  runs: { key: string; value: KeptRun }
  files: { key: string; value: { readonly name: string; readonly blob: Blob } }
}

export type Store = {
  readonly all: () => Promise<readonly KeptRun[]>
  readonly get: (key: string) => Promise<KeptRun | undefined>
  /** Gives the run with its new version. Throws where it cannot be kept. */
  readonly put: (run: KeptRun) => Promise<KeptRun>
  readonly remove: (key: string) => Promise<void>
  /** Photos and data of a run, by name. */
  readonly putFile: (key: string, name: string, blob: Blob) => Promise<void>
  readonly file: (key: string, name: string) => Promise<Blob | undefined>
  readonly removeFile: (key: string, name: string) => Promise<void>
}

/** Another tab has written this run in the meantime. */
export class ChangedElsewhere extends Error {}

const database = (db: IDBPDatabase<Schema>): Store => ({
  all: () => db.getAll('runs'),
  get: (key) => db.get('runs', key),
  put: async (run) => {
    // Strict: on the disk before it is said to be kept, so that an empty battery takes nothing.
    const transaction = db.transaction('runs', 'readwrite', { durability: 'strict' })
    const there = await transaction.store.get(run.key)
    if (there && there.version !== run.version) {
      await transaction.done
      throw new ChangedElsewhere()
    }
    const next = { ...run, version: run.version + 1 }
    await Promise.all([transaction.store.put(next), transaction.done])
    return next
  },
  remove: async (key) => {
    const transaction = db.transaction(['runs', 'files'], 'readwrite')
    const range = IDBKeyRange.bound(`${key}/`, `${key}/\uffff`)
    await Promise.all([
      transaction.objectStore('runs').delete(key),
      transaction.objectStore('files').delete(range),
      transaction.done,
    ])
  },
  putFile: async (key, name, blob) => {
    await db.put('files', { name, blob }, `${key}/${name}`)
  },
  file: async (key, name) => (await db.get('files', `${key}/${name}`))?.blob,
  removeFile: (key, name) => db.delete('files', `${key}/${name}`),
})

const PREFIX = 'record/'

/** Without a database: the runs without their photos, in the plain store. */
const plain = (storage: Storage): Store => {
  const read = (key: string): KeptRun | undefined => {
    const text = storage.getItem(PREFIX + key)
    const value: KeptRun | null = text === null ? null : JSON.parse(text)
    return value ?? undefined
  }
  const refuse = async (): Promise<never> => {
    throw new Error('this browser keeps no files; hand the run in without them')
  }
  return {
    all: async () =>
      Object.keys(storage)
        .filter((name) => name.startsWith(PREFIX))
        .flatMap((name) => read(name.slice(PREFIX.length)) ?? []),
    get: async (key) => read(key),
    put: async (run) => {
      const there = read(run.key)
      if (there && there.version !== run.version) throw new ChangedElsewhere()
      const next = { ...run, version: run.version + 1 }
      storage.setItem(PREFIX + run.key, JSON.stringify(next))
      return next
    },
    remove: async (key) => storage.removeItem(PREFIX + key),
    putFile: refuse,
    file: async () => undefined,
    removeFile: async () => undefined,
  }
}

/** Throws where the browser keeps nothing at all. */
export const openStore = async (): Promise<Store> => {
  try {
    const db = await openDB<Schema>('ground-test-record', 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore('runs', { keyPath: 'key' })
        fresh.createObjectStore('files')
      },
    })
    return database(db)
  } catch {
    localStorage.setItem(`${PREFIX}-probe`, '')
    localStorage.removeItem(`${PREFIX}-probe`)
    return plain(localStorage)
  }
}
