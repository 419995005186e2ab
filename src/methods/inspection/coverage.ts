/** Torques and a clearance read once each (invented). */
import { type Coverage, certified } from '../coverage.ts'

export const coverage: Coverage = {
  onlyFew: 'an entry is read once',
  setups: [
    {
      title: 'a torque and a clearance, read once each',
      readings: 'few',
      givens: {},
      fields: {
        checklist: {
          webbing: { text: 'webbing without cuts' },
          torque: { text: 'torque of the lap bolt', low: '22 N·m', high: '27 N·m' },
          gap: { text: 'clearance of the latch', low: '1.5 mm', high: '3 mm' },
        },
      },
      instruments: {
        torque: certified('wrench', { resolution: 0.1, gain: 0.02, offset: 0.1 }),
        gap: certified('feeler', { resolution: 1e-5, gain: 0.002, offset: 1e-5 }),
      },
      truth: { torque: 24, gap: 0.0021 },
      // Bolts differ: so the true value lies anywhere between two digits.
      varies: { torque: 0.5, gap: 1e-4 },
      noise: {},
      expected: ({ torque = 0, gap = 0 }) => ({ torque, gap }),
    },
  ],
  without: { entries: 'a count is exact', not_ok: 'a count is exact', open: 'a count is exact' },
}
