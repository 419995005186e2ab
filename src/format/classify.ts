/** Which kind of file a path is, and the id that its name gives. */

export type FileKind =
  | 'run'
  | 'rework'
  | 'item'
  | 'readiness'
  | 'card'
  | 'instrument'
  | 'article'
  | 'gate'
  | 'campaign'
  | 'people'

export type Classified =
  | { readonly kind: FileKind; readonly id: string }
  /** A picture, a data file: named by a record, or of no concern. */
  | { readonly kind: 'other' }
  | { readonly kind: 'unknown'; readonly message: string; readonly hint: string }

const FOLDERS: readonly { readonly pattern: RegExp; readonly kind: FileKind }[] = [
  { pattern: /^records\/runs\/\d{4}-\d{2}\/([^/]+)\.md$/, kind: 'run' },
  { pattern: /^records\/rework\/([^/]+)\.md$/, kind: 'rework' },
  { pattern: /^records\/items\/([^/]+)\.md$/, kind: 'item' },
  { pattern: /^records\/readiness\/([^/]+)\.md$/, kind: 'readiness' },
  { pattern: /^shared\/cards\/([^/]+)\.md$/, kind: 'card' },
  { pattern: /^shared\/instruments\/([^/]+)\.md$/, kind: 'instrument' },
  { pattern: /^shared\/articles\/(.+)\.md$/, kind: 'article' },
  { pattern: /^shared\/gates\/([^/]+)\.md$/, kind: 'gate' },
]

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/

/** Paths are relative to the root, with forward slashes. README files are of no concern. */
export function classify(path: string): Classified {
  if (path === 'shared/campaign.yaml') return { kind: 'campaign', id: 'campaign' }
  if (path === 'shared/people.yaml') return { kind: 'people', id: 'people' }
  const name = path.slice(path.lastIndexOf('/') + 1)
  if (!/\.(md|ya?ml|markdown)$/i.test(name) || /^readme\.md$/i.test(name)) return { kind: 'other' }
  for (const { pattern, kind } of FOLDERS) {
    const id = pattern.exec(path)?.[1]
    if (id === undefined) continue
    if (id.split('/').every((part) => ID.test(part))) return { kind, id }
    const hint = `rename it to \`${suggestedId(id)}.md\``
    return { kind: 'unknown', message: `\`${id}\` is no id: small letters, digits and hyphens`, hint }
  }
  const inRuns = path.startsWith('records/runs/')
  const hint = inRuns
    ? 'a run lies in a folder a month: `records/runs/2026-03/2026-03-04-0912-tank-leak.md`'
    : 'records lie in `records/runs/<month>`, `rework`, `items`, `readiness`; what they refer to in `shared/`'
  return { kind: 'unknown', message: 'no kind of record lies in this place under this name', hint }
}

const suggestedId = (id: string) =>
  id
    .toLowerCase()
    .replace(/[^a-z0-9/]+/g, '-')
    .replace(/^-+|-+$/g, '')
