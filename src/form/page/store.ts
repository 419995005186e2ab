/** Runs that are not handed in yet, kept in the browser: a database, else the plain store of the page. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Stamps } from '../clock.ts'
import { emptyRun, type RunState } from '../state.ts'

export type KeptRun = {
  readonly key: string
  readonly card: string
  readonly title: string
  readonly state: RunState
  readonly stamps: Stamps
  /** ms since 1970. */
  readonly changed: number
  /** When it was last handed in (ms since 1970), and whether it was changed after that; null: never. */
  readonly handed: { readonly at: number; readonly changed: boolean } | null
  /** What it was called when it was handed in, or opened from a file; empty before. */
  readonly known: string
  /** What it was called at its last change: its photos have that name. */
  readonly called: string
  /** What `when` was set to as the page was opened: nobody has said it. Empty for a run from a file. */
  readonly begunAt: string
  /** What of the file that was opened this form cannot keep, in words. */
  readonly losses: readonly string[]
  /** Digest of the card that it was begun with. */
  readonly begunWith: string
  /** Counts up with each writing: two tabs with one run must not overwrite each other unseen. */
  readonly version: number
}

interface Schema extends DBSchema {
  runs: { key: string; value: KeptRun }
  files: { key: string; value: { readonly name: string; readonly blob: Blob } }
}

/** Name of the data file among the files of a run, whatever the run comes to be called. */
export const DATA = 'data'

export type Store = {
  readonly all: () => Promise<readonly KeptRun[]>
  readonly get: (key: string) => Promise<KeptRun | undefined>
  /** Gives the run with its new version. Throws where it cannot be kept. */
  readonly put: (run: KeptRun) => Promise<KeptRun>
  readonly remove: (key: string) => Promise<void>
  /** Photos and data of a run, by name. */
  readonly putFile: (key: string, name: string, blob: Blob) => Promise<void>
  /** The same, never in the place of another: false where one of that name is there. */
  readonly addFile: (key: string, name: string, blob: Blob) => Promise<boolean>
  readonly file: (key: string, name: string) => Promise<Blob | undefined>
  readonly removeFile: (key: string, name: string) => Promise<void>
}

/** A run of which nothing is known yet but its key and its card. */
export const blankRun = (key: string, card: string): KeptRun => ({
  key,
  card,
  title: card,
  state: emptyRun(card),
  stamps: null,
  changed: 0,
  handed: null,
  known: '',
  called: '',
  begunAt: '',
  losses: [],
  begunWith: '',
  version: 0,
})

/** A run that an earlier state of this page has kept lacks what came later. */
const completed = (run: KeptRun): KeptRun => ({
  ...blankRun(run.key, run.card),
  ...run,
  state: { ...emptyRun(run.card), ...run.state },
})

/** Another tab has written this run in the meantime. */
export class ChangedElsewhere extends Error {}

type Connection = () => Promise<IDBPDatabase<Schema>>

/** Phones end the connection of a page that slept for long: then it is opened anew. */
const connect = (): Connection => {
  let current: Promise<IDBPDatabase<Schema>> | null = null
  const forget = (): void => {
    current = null
  }
  const open = (): Promise<IDBPDatabase<Schema>> =>
    openDB<Schema>('ground-test-record', 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore('runs', { keyPath: 'key' })
        fresh.createObjectStore('files')
      },
      terminated: forget,
    })
  return () => {
    current ??= open().catch((error: unknown) => {
      forget()
      throw error
    })
    return current
  }
}

const database = (connection: Connection): Store => ({
  all: async () => (await (await connection()).getAll('runs')).map(completed),
  get: async (key) => {
    const run = await (await connection()).get('runs', key)
    return run && completed(run)
  },
  put: async (run) => {
    // Strict: on the disk before it is said to be kept, so that an empty battery takes nothing.
    const transaction = (await connection()).transaction('runs', 'readwrite', { durability: 'strict' })
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
    const transaction = (await connection()).transaction(['runs', 'files'], 'readwrite')
    const range = IDBKeyRange.bound(`${key}/`, `${key}/\uffff`)
    await Promise.all([
      transaction.objectStore('runs').delete(key),
      transaction.objectStore('files').delete(range),
      transaction.done,
    ])
  },
  putFile: async (key, name, blob) => {
    await (await connection()).put('files', { name, blob }, `${key}/${name}`)
  },
  addFile: async (key, name, blob) => {
    const transaction = (await connection()).transaction('files', 'readwrite', { durability: 'strict' })
    const isThere = (await transaction.store.getKey(`${key}/${name}`)) !== undefined
    const adding = isThere ? undefined : transaction.store.add({ name, blob }, `${key}/${name}`)
    await Promise.all([adding, transaction.done])
    return !isThere
  },
  file: async (key, name) => (await (await connection()).get('files', `${key}/${name}`))?.blob,
  removeFile: async (key, name) => (await connection()).delete('files', `${key}/${name}`),
})

const PREFIX = 'record/'

/** Without a database: the runs without their photos, in the plain store. */
const plain = (storage: Storage): Store => {
  const read = (key: string): KeptRun | undefined => {
    const text = storage.getItem(PREFIX + key)
    const value: KeptRun | null = text === null ? null : JSON.parse(text)
    return value ? completed(value) : undefined
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
    addFile: refuse,
    file: async () => undefined,
    removeFile: async () => undefined,
  }
}

/** Throws where the browser keeps nothing at all. */
export const openStore = async (): Promise<Store> => {
  const connection = connect()
  try {
    await connection()
    return database(connection)
  } catch {
    localStorage.setItem(`${PREFIX}-probe`, '')
    localStorage.removeItem(`${PREFIX}-probe`)
    return plain(localStorage)
  }
}
