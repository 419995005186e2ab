/** Digits: each point was rounded anew, by the scale and by the tape. */
import type { Columns, ExtraSource, Givens, Selection } from '../method.ts'
import { digitSources } from '../repeats.ts'
import type { Choice } from './select.ts'

export const sources = (columns: Columns, _: Givens, selection: Selection): readonly ExtraSource[] => {
  const { points, spread } = selection as Choice
  const none = { sd: Number.NaN, dof: 0 }
  return [
    ...digitSources('reading', 'the scale', columns, points, spread),
    ...digitSources('tare', 'the tare', columns, points, none),
    ...digitSources('arm', 'the arm', columns, points, none),
  ]
}
