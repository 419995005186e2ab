/** What bars a pass: the target not reached or held with the rule's confidence, a station that softened. */
import { tCdf, tQuantile } from '../../quantity/distribution.ts'
import { effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import type { Choice } from './choice.ts'
import { FEWEST_DIGITS, isSofter } from './softening.ts'
import { estimateStation } from './station.ts'
import { joules, metres, pascals, percent, seconds } from './words.ts'

const bar = (text: string, measures?: readonly string[]): Remark => ({ effect: 'bars-pass', text, measures })
const note = (text: string): Remark => ({ effect: 'note', text })

const reached = (measures: Measures, givens: Givens, p: number): Remark[] => {
  const ratio = measures.peak_ratio
  const hold = seconds(givens.numbers.hold ?? 0)
  if (!ratio) return [bar(`The readings do not show a pressure that was held for ${hold}.`)]
  const u = standardUncertainty(ratio)
  if (u === null) return [bar(`Whether the target was reached is not known: ${ratio.why.join('; ')}.`)]
  const room = ratio.value - 1
  const dof = effectiveDof(ratio)
  const probability = u > 1e-12 ? tCdf(room / u, dof) : room >= -1e-12 ? 1 : 0
  if (probability >= p) return []
  const needed = 1 + tQuantile(p, dof) * u
  return [
    bar(
      `The target was not reached with ${percent(p)} confidence: ${percent(ratio.value)} of it was held for ${hold}, and ${percent(needed)} is needed with this gauge.`,
    ),
  ]
}

/** Air where people test: 110 kPa in a valley, 60 kPa at 4,200 m. */
const AIR = { low: 60_000, high: 110_000 }

/** A run begins and ends without pressure; one that never does, and stands at that of the air, is read absolute. */
const absolute = (columns: Columns): Remark[] => {
  const values = columns.pressure?.values ?? new Float64Array(0)
  let least = Number.POSITIVE_INFINITY
  for (const value of values) if (Math.abs(value) < least) least = Math.abs(value)
  if (!(least > AIR.low && least < AIR.high)) return []
  return [
    bar(
      `No reading is below ${pascals(least)}, about the pressure of the air: an absolute pressure was written as gauge pressure, or the readings without pressure, before and after, are missing.`,
    ),
  ]
}

/** A dial that stands on what moves with the skin shows less of it (common practice, no source). */
const ofBases = (columns: Columns, choice: Choice): Remark[] => {
  const bare = choice.channels.filter(({ suffix }) => !columns[`base_${suffix}`]).map(({ name }) => name)
  if (bare.length === 0) return []
  const names = bare.map((name) => `\`${name}\``).join(', ')
  return [
    note(
      `What the dial of ${names} stands on was not read: it counts as still, and a stand that moves with the skin hides bulge and set.`,
    ),
  ]
}

const ofStations = (columns: Columns, givens: Givens, choice: Choice): Remark[] =>
  choice.channels.flatMap((channel): Remark[] => {
    const { name, suffix, pairs, digits, after } = channel
    const { softening } = estimateStation(columns, givens, choice, channel)
    const remarks: Remark[] = []
    if (softening && isSofter(softening, pairs.length, choice.channels.length))
      remarks.push(
        bar(
          `\`${name}\` is softer in the second loading: ${percent(Number((softening.ratio - 1).toPrecision(2)))} more movement for the same step of pressure, beyond what digits and scatter explain. Something let go: look before it is loaded again.`,
        ),
      )
    else if (choice.loadings > 1 && digits < FEWEST_DIGITS)
      remarks.push(
        note(
          `The bulge of \`${name}\` is ${Math.floor(digits)} digits of its dial: below ${FEWEST_DIGITS} no softening can be told.`,
        ),
      )
    else if (choice.loadings > 1 && !softening)
      remarks.push(
        note(
          `Fewer than two levels of \`${name}\` were read in both loadings, so its softening is not known.`,
        ),
      )
    if (after.length === 0)
      remarks.push(
        bar(
          `\`${name}\` was not read after the pressure was off and the wait was over: its set is not known.`,
          ['set', `set_${suffix}`],
        ),
      )
    return remarks
  })

const ofEnergy = (measures: Measures, givens: Givens): Remark[] => {
  const { stored_energy: energy, standoff } = measures
  if (!energy || !standoff)
    return givens.numbers.volume === undefined
      ? [note('`volume` is not given, so neither the stored energy nor a stand-off distance is.')]
      : []
  const edition = givens.words.edition === 'pcc2_2008' ? 'article 5.1 of 2008' : 'article 501'
  return [
    note(
      `The gas stores ${joules(energy.value)}; stand off ${metres(standoff.value)} for blast (ASME PCC-2, ${edition}), further for what may fly. The standard itself, for pressure equipment, keeps 30 m at least.`,
    ),
  ]
}

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const choice = selection as Choice
  return [
    ...reached(measures, givens, p),
    ...absolute(columns),
    ...ofBases(columns, choice),
    ...ofStations(columns, givens, choice),
    ...(choice.channels.length > 0 && choice.loadings < 2
      ? [note('One loading only: whether the structure softened is not known.')]
      : []),
    ...ofEnergy(measures, givens),
  ]
}
