/** Two states of one run, compared field by field. How the YAML is laid out says nothing. */
import type { Plain } from '../../format/types.ts'
import type { Fields } from '../../format/yaml.ts'
import { joinAddress, NOTHING, normalAddress, sameText } from './addresses.ts'
import { type Difference, tableChanges } from './changed-rows.ts'
import { frontMatter, type RunText, tableOf } from './run-text.ts'
import type { Amendment, Change } from './types.ts'

/** Prose and pictures may change; amendments are what tells of changes. */
const FREE = new Set(['files', 'amendments'])

const isText = (plain: Plain): plain is string => typeof plain === 'string'
const isList = (plain: Plain): plain is readonly Plain[] => Array.isArray(plain)

const words = (plain: Plain | undefined): string => {
  if (plain === undefined) return NOTHING
  if (isText(plain)) return sameText(plain) || NOTHING
  if (isList(plain)) return plain.map(words).join(', ') || NOTHING
  const said = Object.entries(plain).map(([name, value]) => `${name}: ${words(value)}`)
  return said.join(', ') || NOTHING
}

/** Sets of named values: where there was none, each value that came is a change of its own. */
const SETS = new Set(['given', 'instruments', 'rig', 'ambient', 'zero'])

/** Entries that have an `id` go by it, so that one more at the front does not change all others. */
const named = (list: readonly Plain[]): Fields =>
  Object.fromEntries(
    list.map((entry, index) => {
      const id = !isText(entry) && !isList(entry) ? entry.id : undefined
      return [id !== undefined && isText(id) ? id : String(index + 1), entry]
    }),
  )

const plainChanges = (at: string, before: Plain | undefined, after: Plain | undefined): Difference[] => {
  if (words(before) === words(after)) return []
  if (before === undefined || after === undefined || isText(before) || isText(after))
    return [{ at, before: words(before), after: words(after) }]
  const lists = isList(before) || isList(after)
  if (lists && [before, after].every((each) => isList(each) && each.every(isText)))
    return [{ at, before: words(before), after: words(after) }]
  return fieldChanges(
    isList(before) ? named(before) : (before as Fields),
    isList(after) ? named(after) : (after as Fields),
    at,
  )
}

const fieldChanges = (before: Fields, after: Fields, at?: string): Difference[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((name) => {
    const none = at === undefined && SETS.has(name) ? {} : undefined
    return plainChanges(
      at === undefined ? name : joinAddress(at, name),
      Object.hasOwn(before, name) ? before[name] : none,
      Object.hasOwn(after, name) ? after[name] : none,
    )
  })

const lineEnds = (text: string | undefined): string | undefined => text?.replaceAll('\r\n', '\n')

const readingChanges = (before: Fields, after: Fields, old: RunText, now: RunText): Difference[] => {
  const options = ({ readings }: Fields): Plain => (typeof readings === 'string' ? '' : (readings ?? ''))
  const moved = plainChanges('readings', options(before), options(after))
  const [was, is] = [tableOf(old, before), tableOf(now, after)]
  const cells = was && is ? tableChanges(was, is) : []
  const sameFile = lineEnds(old.data?.text) === lineEnds(now.data?.text)
  if (moved.length > 0 || cells.length > 0 || sameFile) return [...moved, ...cells]
  // Beyond the rows that are used, or in a file that cannot be taken apart.
  return [{ at: 'readings file', before: 'the file as it landed', after: 'another content' }]
}

/** Withdrawing a run after it has landed says itself why and by whom; taking the withdrawal back does not. */
const withdrawnSince = (before: Fields, name: string): boolean => name === 'void' && before.void === undefined

/**
 * What changed of the protected fields between two states of a run, in the order of the fields.
 * A state whose front matter cannot be read counts as one field.
 */
export const changesOf = (landed: RunText, now: RunText): Difference[] => {
  const before = frontMatter(landed.text)
  const after = frontMatter(now.text)
  if (!before || !after) {
    if (!before === !after) return []
    const said = (fields: Fields | undefined): string => (fields ? 'fields' : 'cannot be read')
    return [{ at: 'front matter', before: said(before), after: said(after) }]
  }
  const kept = (fields: Fields): Fields =>
    Object.fromEntries(
      Object.entries(fields).filter(
        ([name]) => !FREE.has(name) && name !== 'readings' && !withdrawnSince(before, name),
      ),
    )
  return [...fieldChanges(kept(before), kept(after)), ...readingChanges(before, after, landed, now)]
}

const sameValue = (a: string, b: string): boolean => sameText(a).toLowerCase() === sameText(b).toLowerCase()

/** A change is amended where an amendment names it and what it was when it landed. */
export const withAmendments = (
  changes: readonly Difference[],
  amendments: readonly Amendment[],
): readonly Change[] =>
  changes.map((change) => ({
    ...change,
    amended: amendments.some(
      ({ at, was }) => normalAddress(at) === normalAddress(change.at) && sameValue(was, change.before),
    ),
  }))

/** Amendments that name nothing that changed, with the addresses that did. */
export const idleAmendments = (
  changes: readonly Difference[],
  amendments: readonly Amendment[],
): readonly number[] => {
  const known = new Set(changes.map(({ at }) => normalAddress(at)))
  return amendments.flatMap(({ at }, index) => (known.has(normalAddress(at)) ? [] : [index]))
}
