/** Free decays of one mode (invented): a slow one, a fast one, few readings and many. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'

type Truth = Readonly<Record<string, number>>

/** One degree of freedom with viscous damping: f_n = f_d/√(1 − ζ²), δ = 2πζ/√(1 − ζ²). */
const expected = ({ frequency = 0, damping_ratio: zeta = 0 }: Truth): Truth => ({
  frequency,
  natural_frequency: frequency / Math.sqrt(1 - zeta * zeta),
  damping_ratio: zeta,
  log_decrement: (2 * Math.PI * zeta) / Math.sqrt(1 - zeta * zeta),
  damping_early: zeta,
  damping_late: zeta,
  damping_change: 0,
})

const LAST_TURNS =
  'the last turns are few and small: the first order makes their uncertainty about 5 % too large'

const decay: CoverageSetup = {
  title: '5 Hz, 8 %: 81 readings',
  readings: 'few',
  givens: { clock_error: '0.01 %' },
  instruments: { signal: certified('acc', { gain: 0.02, offset: 0.01 }) },
  // Limits of ± 0.01 %, drawn as a normal of the same standard deviation.
  varies: { clock_rate: 1e-4 / Math.sqrt(3) },
  truth: { frequency: 5, damping_ratio: 0.08, amplitude: 1, rate: 40, duration: 2, offset: 0.3 },
  noise: { noise: 0.003, noise_memory: 0 },
  expected,
  perfect: ['amplitude'],
  wide: { damping_late: LAST_TURNS, damping_change: LAST_TURNS },
}

const many = (title: string, truth: Truth, noise: Truth = {}): CoverageSetup => ({
  ...decay,
  wide: {},
  title,
  readings: 'many',
  truth: { ...decay.truth, ...truth },
  noise: { ...decay.noise, ...noise },
})

export const coverage: Coverage = {
  setups: [
    decay,
    many('10 Hz, 2 %: 1001 readings', { frequency: 10, damping_ratio: 0.02, rate: 400, duration: 2.5 }),
    many('12 Hz, 3 %, drifting: 193 readings', {
      frequency: 12,
      damping_ratio: 0.03,
      rate: 120,
      duration: 1.6,
      drift: 0.02,
    }),
    many(
      '10 Hz, 2 %: 301 readings, noise with a memory of 20 ms',
      { frequency: 10, damping_ratio: 0.02, rate: 120, duration: 2.5 },
      { noise_memory: 0.02 },
    ),
  ],
  without: {
    fit_residual: 'says how far the signal is from one clean mode; for a clean one it is the noise itself',
  },
}
