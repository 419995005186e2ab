/** What it takes to bring it back, once judged: mass off, or moment moved. */
import { rounded } from '../advice-text.ts'
import type { Advice, JudgedTerm, Measures } from '../method.ts'

const missed = (judged: readonly JudgedTerm[], names: readonly string[]): boolean =>
  judged.some(({ verdict, measures }) => verdict === 'fail' && measures.some((name) => names.includes(name)))

/** A centre of gravity that is off by d at the mass W takes a moment of W d, however it is made up. */
const shift = (weight: number, by: number, way: 'aft' | 'forward', measure: string): Advice => ({
  text: `The centre of gravity must go ${rounded(1000 * by)} mm ${way}: ${rounded(weight * by)} kg·m, as 1 kg moved ${rounded(weight * by)} m ${way}, or the same moment by ballast (which adds its mass); and more to cover the uncertainty.`,
  measures: [measure],
})

export const advise = (measures: Measures, judged: readonly JudgedTerm[]): readonly Advice[] => {
  const { weight, cg_forward_margin: forward, cg_aft_margin: aft, weight_margin: margin } = measures
  if (!weight) return []
  const over = judged.find(
    ({ verdict, measures: [name, ...others], limits, direction }) =>
      verdict === 'fail' &&
      name === 'weight' &&
      others.length === 0 &&
      direction === 'below' &&
      limits.length > 0,
  )
  const limit = over?.limits[0]
  const tooMuch = limit !== undefined ? weight.value - limit : -(margin?.value ?? 0)
  return [
    ...(forward && forward.value < 0 && missed(judged, ['cg_forward_margin', 'cg', 'cg_mac'])
      ? [shift(weight.value, -forward.value, 'aft', 'cg_forward_margin')]
      : []),
    ...(aft && aft.value < 0 && missed(judged, ['cg_aft_margin', 'cg', 'cg_mac'])
      ? [shift(weight.value, -aft.value, 'forward', 'cg_aft_margin')]
      : []),
    ...(tooMuch > 0 && missed(judged, ['weight', 'weight_margin'])
      ? [
          {
            text: `${rounded(tooMuch)} kg must come off, and more to cover the uncertainty; weigh again after, for the centre of gravity moves with it.`,
            measures: ['weight'],
          },
        ]
      : []),
  ]
}
