/** What differs between two tables of readings: cells, whole rows, columns, units. Column order says nothing. */
import type { Table } from '../../format/table.ts'
import { joinAddress, NOTHING, sameText } from './addresses.ts'

export type Difference = { readonly at: string; readonly before: string; readonly after: string }

/** Beyond this many comparisons rows are set against each other by their number alone. */
const LARGEST_SEARCH = 4e6

const columnOf = (table: Table, name: string): string[] => {
  const index = table.names.indexOf(name)
  return table.rows.map((row) => sameText(row[index] ?? ''))
}

const wholeColumn = (table: Table, name: string): string =>
  `${table.units[table.names.indexOf(name)] ?? ''}: ${columnOf(table, name).join(' ')}`

const columnChanges = (before: Table, after: Table): Difference[] => [
  ...before.names
    .filter((name) => !after.names.includes(name))
    .map((name) => ({
      at: joinAddress('readings column', name),
      before: wholeColumn(before, name),
      after: NOTHING,
    })),
  ...after.names
    .filter((name) => !before.names.includes(name))
    .map((name) => ({
      at: joinAddress('readings column', name),
      before: NOTHING,
      after: wholeColumn(after, name),
    })),
]

const unitChanges = (before: Table, after: Table, shared: readonly string[]): Difference[] =>
  shared.flatMap((name) => {
    const was = before.units[before.names.indexOf(name)] ?? ''
    const is = after.units[after.names.indexOf(name)] ?? ''
    return was === is ? [] : [{ at: joinAddress('readings unit of', name), before: was, after: is }]
  })

/** Pairs of rows that are the same in both, in order: the longest common subsequence. */
const commonRows = (before: readonly string[], after: readonly string[]): [number, number][] => {
  const width = after.length + 1
  const lengths = new Uint32Array((before.length + 1) * width)
  const at = (i: number, j: number): number => lengths[i * width + j] as number
  for (let i = before.length - 1; i >= 0; i--) {
    for (let j = after.length - 1; j >= 0; j--) {
      lengths[i * width + j] =
        before[i] === after[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1))
    }
  }
  const pairs: [number, number][] = []
  for (let i = 0, j = 0; i < before.length && j < after.length; ) {
    if (before[i] === after[j]) pairs.push([i++, j++])
    else if (at(i + 1, j) >= at(i, j + 1)) i++
    else j++
  }
  return pairs
}

/** Stretches of rows that differ, as [from, to) in both tables. */
const stretches = (
  before: readonly string[],
  after: readonly string[],
): { readonly before: readonly [number, number]; readonly after: readonly [number, number] }[] => {
  let start = 0
  while (start < before.length && start < after.length && before[start] === after[start]) start++
  let end = 0
  const left = Math.min(before.length, after.length) - start
  while (end < left && before[before.length - 1 - end] === after[after.length - 1 - end]) end++
  const old = before.slice(start, before.length - end)
  const now = after.slice(start, after.length - end)
  // Tables of one length are typed over far more often than shifted; and a search through logger files has no end.
  const pairs =
    old.length === now.length || old.length * now.length > LARGEST_SEARCH ? [] : commonRows(old, now)
  const found = []
  let from: [number, number] = [0, 0]
  for (const [i, j] of [...pairs, [old.length, now.length] as const]) {
    if (i > from[0] || j > from[1]) {
      found.push({
        before: [start + from[0], start + i] as const,
        after: [start + from[1], start + j] as const,
      })
    }
    from = [i + 1, j + 1]
  }
  return found
}

const cellChanges = (
  names: readonly string[],
  row: number,
  before: readonly string[],
  after: readonly string[],
): Difference[] =>
  names.flatMap((name, index) => {
    const was = before[index] ?? ''
    const is = after[index] ?? ''
    return was === is
      ? []
      : [
          {
            at: joinAddress('readings row', row, 'column', name),
            before: was || NOTHING,
            after: is || NOTHING,
          },
        ]
  })

/** Cells are compared as they were written: 18.4 and 18.40 are two readings. Rows have their old number. */
export const tableChanges = (before: Table, after: Table): Difference[] => {
  const shared = before.names.filter((name) => after.names.includes(name))
  const rowsOf = (table: Table): string[][] => {
    const columns = shared.map((name) => columnOf(table, name))
    return table.rows.map((_, row) => columns.map((column) => column[row] ?? ''))
  }
  const old = rowsOf(before)
  const now = rowsOf(after)
  const key = (row: readonly string[]): string => row.join('\t')
  const rows = stretches(old.map(key), now.map(key)).flatMap((stretch) => {
    const [from, to] = stretch.before
    const [start, end] = stretch.after
    const paired = Math.min(to - from, end - start)
    const text = (row: readonly string[] | undefined): string => (row ?? []).join(' ').trim()
    return [
      ...Array.from({ length: paired }, (_, n) =>
        cellChanges(shared, from + n + 1, old[from + n] ?? [], now[start + n] ?? []),
      ).flat(),
      ...old.slice(from + paired, to).map((row, n) => ({
        at: joinAddress('readings row', from + paired + n + 1),
        before: text(row),
        after: NOTHING,
      })),
      ...now.slice(start + paired, end).map((row, n) => ({
        at: joinAddress('readings row', start + paired + n + 1),
        before: NOTHING,
        after: text(row),
      })),
    ]
  })
  return [...columnChanges(before, after), ...unitChanges(before, after, shared), ...rows]
}
