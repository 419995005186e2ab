/** Histories made by hand: a row of commits with the files that each left behind, and what lies there now. */
import { createHash } from 'node:crypto'
import type { Campaign } from '../../../src/campaign/types.ts'
import { digestsOf, pastDigestsOf } from '../../../src/history/node/digest.ts'
import type { Commit, FileHistory, ForgePull, KnownHistory, Version } from '../../../src/history/types.ts'
import { BASE, campaignOfFiles } from '../small.ts'

export type Files = Readonly<Record<string, string | null>>

export type Step = {
  /** `YYYY-MM-DD`, at noon. */
  readonly day: string
  readonly files?: Files
  /** Local part of the author's e-mail. */
  readonly by?: string
  readonly trailers?: readonly (readonly [string, string])[]
  readonly signature?: Commit['signature']
  readonly signer?: string
  /** Not on the main line: on the branch that is checked out. */
  readonly proposed?: boolean
}

export type Story = {
  readonly steps: readonly Step[]
  /** What lies there otherwise than in the last commit. */
  readonly now?: Files
  readonly pulls?: readonly ForgePull[]
  /** Number of the step with which the history begins. */
  readonly begins?: number
}

const sha = (text: string): string => createHash('sha1').update(text).digest('hex')

/** What git calls the content of a text. */
export const blobOf = (text: string): string => sha(`blob ${Buffer.byteLength(text)}\0${text}`)

export const commitOf = (step: number): string => sha(`commit ${step}`)

const commit = (step: Step, index: number): Commit => {
  const by = step.by ?? 'ann'
  const time = `${step.day}T12:00:00+01:00`
  return {
    hash: commitOf(index),
    parents: index === 0 ? [] : [commitOf(index - 1)],
    author: { name: by, email: `${by}@example.org` },
    authored: time,
    committed: time,
    epoch: Date.parse(time),
    subject: `step ${index}`,
    trailers: (step.trailers ?? []).map(([key, value]) => ({ key, value, paragraph: 1 })),
    signature: step.signature ?? 'none',
    signer: step.signer ?? null,
  }
}

type Tree = Map<string, string>

const put = (tree: Tree, files: Files): void => {
  for (const [path, text] of Object.entries(files)) {
    if (text === null) tree.delete(path)
    else tree.set(path, text)
  }
}

const versions = (steps: readonly Step[], path: string, wanted: (step: Step) => boolean): Version[] =>
  steps.flatMap((step, index) => {
    const text = step.files?.[path]
    if (text === undefined || !wanted(step)) return []
    return [{ commit: commitOf(index), path, blob: text === null ? null : blobOf(text) }]
  })

const fileHistory = (steps: readonly Step[], begins: number, head: Tree, path: string): FileHistory => {
  const first = steps[begins]
  const landed = versions(steps, path, (step) => !step.proposed)
  const before = landed.filter(({ commit }) =>
    steps.slice(0, begins + 1).some((_, n) => commitOf(n) === commit),
  )
  const state = before.at(-1)
  const opening = first && state && state.blob !== null ? [{ ...state, commit: commitOf(begins) }] : []
  const text = head.get(path)
  return {
    path,
    landed: begins === 0 ? landed : [...opening, ...landed.slice(before.length)],
    touched: versions(steps, path, () => true),
    head: text === undefined ? null : blobOf(text),
  }
}

/** The first step brings the base, unless it brings files of that name itself. */
export const tell = ({ steps: told, now = {}, pulls = [], begins = 0 }: Story) => {
  const steps = told.map((step, index) =>
    index === 0 ? { ...step, files: { ...BASE, ...step.files } } : step,
  )
  const head: Tree = new Map()
  for (const step of steps) put(head, step.files ?? {})
  const texts: Tree = new Map(head)
  put(texts, now)
  const paths = new Set([...steps.flatMap((step) => Object.keys(step.files ?? {})), ...texts.keys()])
  const blobs = new Map([...texts].map(([path, text]) => [path, blobOf(text)]))
  const today = new Set(blobs.values())
  const all = steps.flatMap((step) => Object.values(step.files ?? {}).flatMap((text) => text ?? []))
  const changed = [...paths].filter((path) => head.get(path) !== texts.get(path))
  const line = steps.flatMap((step, index) => (step.proposed ? [] : [commitOf(index)]))
  const files = new Map(
    [...paths].flatMap((path) => {
      const file = fileHistory(steps, begins, head, path)
      return file.touched.length > 0 ? [[path, file] as const] : []
    }),
  )
  const history: KnownHistory = {
    state: 'known',
    head: commitOf(steps.length - 1),
    line: line.slice(begins),
    onMain: !steps.at(-1)?.proposed,
    commits: new Map(steps.map((step, index) => [commitOf(index), commit(step, index)])),
    files,
    uncommitted: new Map(
      changed.map((path) => [path, !head.has(path) ? 'added' : texts.has(path) ? 'changed' : 'removed']),
    ),
    blobs,
    digests: digestsOf(blobs),
    pastDigests: pastDigestsOf(files),
    texts: new Map(all.map((text) => [blobOf(text), text] as const).filter(([blob]) => !today.has(blob))),
    pulls,
    begins: begins === 0 ? null : commitOf(begins),
    notes: [],
  }
  return { history, texts }
}

export const campaignOfStory = (story: Story): Campaign => {
  const { history, texts } = tell(story)
  return campaignOfFiles(texts, { history })
}

/** Trailers by which somebody reviews these contents, by path, on a later day. */
export const review = (
  day: string,
  by: string,
  files: Readonly<Record<string, string>>,
  more: Partial<Step> = {},
): Step => {
  const digests = digestsOf(new Map(Object.entries(files).map(([path, text]) => [path, blobOf(text)])))
  return {
    day,
    by,
    trailers: [
      ...[...digests].map(([path, digest]) => {
        const id = path.slice(path.lastIndexOf('/') + 1).replace(/\.[a-z]+$/, '')
        return ['Reviewed-content', `${digest} ${id}`] as const
      }),
      ['Reviewed-by', `${by} <${by}@example.org>`] as const,
    ],
    ...more,
  }
}
