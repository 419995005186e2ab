/** What bars a pass: a position or a side that was not read, stops that are not fitted. */
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { NEUTRAL, positionsOf } from './positions.ts'
import type { Choice } from './select.ts'

const bar = (text: string): Remark => ({ effect: 'bars-pass', text })
const note = (text: string): Remark => ({ effect: 'note', text })
const said = (name: string): string => name.replaceAll('_', ' ')

const unread = (columns: Columns, givens: Givens, { places, cells }: Choice): Remark[] => {
  const sides = columns.side ? (['left', 'right'] as const) : ([''] as const)
  return positionsOf(givens.fields).flatMap(({ name }) =>
    sides.flatMap((side) => {
      const isRead =
        places.some((place) => place.position.name === name && place.side === side) ||
        // Neutral itself has no place where all others are counted from it.
        (name === NEUTRAL && cells.some((cell) => cell.position === NEUTRAL && cell.side === side))
      return isRead
        ? []
        : [bar(`${said(name)}${side ? `, ${side} side,` : ''} was not read, and the card names it`)]
    }),
  )
}

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
): readonly Remark[] => {
  const choice = selection as Choice
  const { places, spreads } = choice
  const remarks = unread(columns, givens, choice)
  if (givens.words.stops === 'not-fitted')
    remarks.push(
      bar(
        'the stops are not fitted: this shows that there is travel enough, and not that it goes no further',
      ),
    )
  remarks.push(
    note(
      'angles do not show that a surface moves the right way for the stick: two people check that, and an inspection records it',
    ),
  )
  if (givens.words.configuration === undefined)
    remarks.push(
      note(
        '`configuration` is not given: where flaps, trim and the other axis stood, the record does not say',
      ),
    )
  const used = places.some(({ cell }) => cell.column === 'offset') ? spreads.offset : spreads.angle
  if (used.dof < 2)
    remarks.push(
      note(
        'no position was read three times, so how well it comes back is not in the uncertainty: move away and read again',
      ),
    )
  if (columns.force && !measures.friction_force)
    remarks.push(
      note(
        'no position has a force both ways, so no friction is given: pull through it one way and the other, and sign the forces by their way',
      ),
    )
  return remarks
}
