/**
 * Aggregates in formulas: what makes one value out of a column. Each is taken out of the formula and stands there as
 * a name, so that dimension, value and budget of the rest come from the general formulas.
 */
import { divideDimension, multiplyDimension } from '../../quantity/dimension.ts'
import { BUILTINS, formatNode, namesIn, rewrite } from '../../quantity/formula/index.ts'
import type { Node } from '../../quantity/formula/types.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { nearest } from '../../quantity/nearest.ts'
import type { Dimension, Fault } from '../../quantity/types.ts'
import type { DeclaredColumn } from './columns.ts'

export const AGGREGATES = {
  mean: { columns: 1, least: 2, example: 'mean(y)' },
  max: { columns: 1, least: 1, example: 'max(y)' },
  min: { columns: 1, least: 1, example: 'min(y)' },
  first: { columns: 1, least: 1, example: 'first(y)' },
  last: { columns: 1, least: 1, example: 'last(y)' },
  count: { columns: 1, least: 0, example: 'count(y)' },
  range: { columns: 1, least: 2, example: 'range(y)' },
  slope: { columns: 2, least: 3, example: 'slope(y, x)' },
  at: { columns: 2, least: 1, example: 'at(y, x, 5 min)' },
  integral: { columns: 2, least: 3, example: 'integral(y, x)' },
} as const

export type AggregateName = keyof typeof AGGREGATES

export type Aggregate = {
  /** The call as text; two calls that read the same are one aggregate. */
  readonly key: string
  readonly name: AggregateName
  readonly y: DeclaredColumn
  readonly x?: DeclaredColumn
  /** Where `at` looks: a word of the column x, or a formula over givens. */
  readonly place?: { readonly word: string } | { readonly node: Node }
  readonly start: number
  readonly end: number
}

type Call = Extract<Node, { type: 'call' }>
type Columns = readonly DeclaredColumn[]

const isAggregateName = (name: string): name is AggregateName => Object.hasOwn(AGGREGATES, name)

const named = (columns: Columns, node: Node | undefined): DeclaredColumn | undefined =>
  node?.type === 'name' ? columns.find((column) => column.name === node.name) : undefined

/** `max(a, b)` over values is the general function; `max(y)` over a column is an aggregate. */
const isAggregate = (call: Call, columns: Columns): boolean =>
  isAggregateName(call.name) &&
  (!['max', 'min'].includes(call.name) ||
    (call.args.length === 1 && named(columns, call.args[0]) !== undefined))

const fault = (at: Node, message: string, more: Partial<Fault> = {}): Fault => ({
  code: 'tabulated/aggregate',
  message,
  start: at.start,
  end: at.end,
  ...more,
})

/** Words and counts mark rows: nothing lies between two of them. */
export const isLabel = (column: DeclaredColumn): boolean => column.kind === 'text' || column.kind === 'count'

const placeOf = (call: Call, x: DeclaredColumn, columns: Columns): Aggregate['place'] | Fault => {
  const node = call.args[2] as Node
  if (x.kind === 'text') {
    const { words = [] } = x
    const word = node.type === 'name' ? node.name : formatNode(node)
    if (words.includes(word)) return { word }
    const near = nearest(word, words)
    const hint =
      words.length > 0
        ? undefined
        : `list them on the card: \`${x.name}: {unit: text, words: [left, right], …}\``
    return fault(node, `\`${word}\` is no word of the column \`${x.name}\``, {
      expected: near.length > 0 ? near : words,
      hint,
    })
  }
  const column = namesIn(node).find((name) => columns.some((each) => each.name === name))
  return column ? fault(node, `the place in \`at\` is a value, not the column \`${column}\``) : { node }
}

const readCall = (call: Call, columns: Columns): Aggregate | Fault => {
  const name = call.name as AggregateName
  const { columns: wanted, example } = AGGREGATES[name]
  const count = name === 'at' ? 3 : wanted
  const hint = `as in \`${example}\``
  if (call.args.length !== count)
    return fault(
      call,
      `\`${name}\` takes ${count === 1 ? 'one column' : `${count} arguments`}, not ${call.args.length}`,
      { hint },
    )
  const found = call.args.slice(0, wanted).map((arg) => named(columns, arg))
  const strange = found.indexOf(undefined)
  if (strange >= 0) {
    const arg = call.args[strange] as Node
    const near =
      arg.type === 'name'
        ? nearest(
            arg.name,
            columns.map((column) => column.name),
          )
        : []
    const expected = near.length > 0 ? near : columns.map((column) => column.name)
    const message = `\`${name}\` takes a column of the card, and \`${formatNode(arg)}\` is none`
    return fault(arg, message, { expected })
  }
  const [y, x] = found as [DeclaredColumn, DeclaredColumn | undefined]
  if (y.kind === 'text' && name !== 'count')
    return fault(call.args[0] as Node, `\`${y.name}\` holds words, and \`${name}\` needs values`)
  if (x?.kind === 'text' && name !== 'at')
    return fault(call.args[1] as Node, `\`${x.name}\` holds words, and \`${name}\` needs values`)
  const place = name === 'at' && x ? placeOf(call, x, columns) : undefined
  if (place && 'code' in place) return place
  return { key: formatNode(call), name, y, x, place, start: call.start, end: call.end }
}

/** The formula with a name in the place of each aggregate, those aggregates, and what is wrong with them. */
export const takeApart = (
  node: Node,
  columns: Columns,
): { readonly node: Node; readonly aggregates: readonly Aggregate[]; readonly faults: readonly Fault[] } => {
  const aggregates: Aggregate[] = []
  const faults: Fault[] = []
  const rest = rewrite(node, (at) => {
    if (at.type === 'call' && isAggregate(at, columns)) {
      const read = readCall(at, columns)
      if ('code' in read) faults.push(read)
      else aggregates.push(read)
      return { type: 'name', name: 'code' in read ? formatNode(at) : read.key, start: at.start, end: at.end }
    }
    if (at.type === 'call' && !Object.hasOwn(BUILTINS, at.name)) {
      const expected = nearest(at.name, [...Object.keys(AGGREGATES), ...Object.keys(BUILTINS)])
      const hint = 'functions such as `air_density(h)` stand in `derive`, which goes on from the measures'
      const message = `there is no function \`${at.name}\` for measures`
      faults.push(fault(at, message, { code: 'formula/unknown-function', expected, hint }))
      return { type: 'name', name: formatNode(at), start: at.start, end: at.end }
    }
    const bare = named(columns, at)
    if (bare) {
      const hint = `take a value of it, as in \`mean(${bare.name})\` or \`last(${bare.name})\``
      faults.push(fault(at, `\`${bare.name}\` is a column, and a formula needs one value`, { hint }))
    }
    return null
  })
  return { node: rest, aggregates, faults }
}

export const aggregateDimension = ({ name, y, x }: Aggregate): Dimension => {
  if (name === 'count') return KINDS.count.dim
  const dim = KINDS[y.kind].dim
  if (name === 'slope' && x) return divideDimension(dim, KINDS[x.kind].dim)
  if (name === 'integral' && x) return multiplyDimension(dim, KINDS[x.kind].dim)
  return dim
}
