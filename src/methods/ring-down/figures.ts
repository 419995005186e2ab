/** What to look at: the decay with its fit, and the damping against the amplitude. */
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { fitDecay, kindOfSignal } from './estimate.ts'
import { dampingRatio, OMEGA, oscillation } from './oscillation.ts'
import { asDecay, pointsOf } from './select.ts'

/** More points than this say no more on paper. */
const MOST_POINTS = 600

const everyNth = (count: number): number[] => {
  const every = Math.ceil(count / MOST_POINTS)
  return Array.from({ length: Math.ceil(count / every) }, (_, k) => k * every)
}

export const figures = (
  measures: Measures,
  columns: Columns,
  _: Givens,
  selection: Selection,
): readonly Figure[] => {
  const decay = asDecay(selection)
  const fitted = fitDecay(columns, decay)
  if (!fitted) return []
  const { t, fit, blocks } = fitted
  const { y } = pointsOf(columns, decay.rows)
  const kind = kindOfSignal(columns)
  const shown = everyNth(t.length)
  const times = shown.map((i) => t[i] as number)
  const unused = new Float64Array(fit.parameters.length)
  const course: Figure = {
    id: 'decay',
    title: 'Free decay and its fit',
    caption: 'What is fitted: from the largest swing until it has died down.',
    x: { label: 'time since the first fitted reading', kind: 'time' },
    y: { label: 'signal', kind },
    series: [
      { name: 'read', mark: 'points', x: times, y: shown.map((i) => y[i] as number) },
      { name: 'fit', mark: 'line', x: times, y: times.map((at) => oscillation(at, fit.parameters, unused)) },
      { name: 'rest', mark: 'line', muted: true, x: times, y: shown.map((i) => fit.residuals[i] as number) },
    ],
    limits: [],
    bands: [],
  }
  const omega = fit.parameters[OMEGA] as number
  // From one block to the one after the next: two neighbours alone show mostly noise.
  const steps = blocks.slice(0, decay.clear).flatMap((block, k) => {
    const later = blocks[k + 2]
    if (!later || k + 2 >= decay.clear) return []
    const lasts = later.time - block.time
    const rate = Math.log(block.amplitude / later.amplitude) / lasts
    const single = Math.sqrt(fit.squares / fit.dof)
    const u =
      (single * Math.hypot(block.unit / block.amplitude, later.unit / later.amplitude)) / lasts / omega
    return [{ amplitude: Math.sqrt(block.amplitude * later.amplitude), ratio: dampingRatio(rate, omega), u }]
  })
  if (steps.length < 2) return [course]
  const against: Figure = {
    id: 'damping-against-amplitude',
    title: 'Damping against amplitude',
    caption:
      'Viscous damping is level. Friction rises to the left, where the swing is small; a second mode waves up and down.',
    x: { label: 'amplitude', kind },
    y: { label: 'damping ratio', kind: 'number' },
    series: [
      {
        name: 'from block to block',
        mark: 'both',
        x: steps.map(({ amplitude }) => amplitude),
        y: steps.map(({ ratio }) => ratio),
        u: steps.map(({ u }) => u),
      },
    ],
    limits: measures.damping_ratio
      ? [{ axis: 'y', at: measures.damping_ratio.value, label: 'whole decay' }]
      : [],
    bands: [],
  }
  return [course, against]
}
