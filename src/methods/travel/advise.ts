/** How far to move which stop, once judged. */
import { missedOn, rounded } from '../advice-text.ts'
import type { Advice, Givens, JudgedTerm, Measures } from '../method.ts'
import { positionsOf } from './positions.ts'

const DEGREE = Math.PI / 180
const degrees = (angle: number): string => `${rounded(angle / DEGREE)}°`
const SIDES = ['', '_left', '_right'] as const

/** Positions whose mean lies outside its tolerance, with how far it is off the nominal; of two sides each by itself. */
const outside = (measures: Measures, givens: Givens): string[] =>
  positionsOf(givens.fields).flatMap(({ name }) => {
    const sided =
      measures[`${name}_left_margin`] !== undefined || measures[`${name}_right_margin`] !== undefined
    return SIDES.filter((side) => (side === '') !== sided).flatMap((side) => {
      const margin = measures[`${name}${side}_margin`]?.value
      const error = measures[`${name}${side}_error`]?.value
      if (margin === undefined || error === undefined || margin >= 0) return []
      const which = `${name}${side}`.replaceAll('_', ' ')
      return [
        `${which} goes ${degrees(Math.abs(error))} ${error > 0 ? 'beyond' : 'short of'} its nominal, ${degrees(-margin)} outside its tolerance`,
      ]
    })
  })

export const advise = (
  measures: Measures,
  judged: readonly JudgedTerm[],
  givens: Givens,
): readonly Advice[] => {
  const missed = judged.some(
    ({ verdict, measures: names }) =>
      verdict !== 'pass' && names.some((name) => /_?(margin|error)$/.test(name)),
  )
  const found = missed ? outside(measures, givens) : []
  const apart = missedOn(judged, 'asymmetry').filter(({ verdict }) => verdict === 'fail')
  const asymmetry = measures.asymmetry?.value
  return [
    ...(found.length > 0
      ? [
          {
            text: `${found.join('; ')}. Set the stop by that much towards the nominal, check the lock, and read again: what was changed is a rework.`,
            measures: ['worst_margin'],
          },
        ]
      : []),
    ...(apart.length > 0 && asymmetry !== undefined
      ? [
          {
            text: `The left goes ${degrees(Math.abs(asymmetry))} ${asymmetry > 0 ? 'further' : 'less far'} than the right: look at the rigging in neutral before any stop is moved.`,
            measures: ['asymmetry'],
          },
        ]
      : []),
  ]
}
