/** Articles and their parts by the names that records call them. */
import type { Records } from '../format/types.ts'
import { nearest } from '../quantity/nearest.ts'

/** `wing-left`, `wing-left/tank`, `wing-left/tank/port` … */
export const partNames = ({ articles }: Pick<Records, 'articles'>): string[] =>
  Object.values(articles)
    .flatMap(({ id, parts }) => [id, ...parts.map((part) => `${id}/${part}`)])
    .filter((name, index, all) => all.indexOf(name) === index)
    .sort()

/** Names that are close to one that is not there, also by its last step: `aft-rod` finds `controls/elevator/aft-rod`. */
export const closeNames = (name: string, names: readonly string[]): string[] => {
  const close = nearest(name, names)
  if (close.length > 0) return close
  const last = (text: string): string => text.slice(text.lastIndexOf('/') + 1)
  const near = new Set(nearest(last(name), new Set(names.map(last))))
  return names.filter((each) => near.has(last(each))).slice(0, 4)
}

/** `There is no card tank-leek; these are close: tank-leak.` */
export const unknownName = (what: string, name: string, names: readonly string[]): string => {
  const close = closeNames(name, names)
  const hint = close.length > 0 ? close : names.length <= 8 ? names : []
  const said = close.length > 0 ? 'these are close' : 'there are'
  return `There is no ${what} ${name}${hint.length > 0 ? `; ${said}: ${hint.join(', ')}` : ''}.`
}
