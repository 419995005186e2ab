/** Invented set-ups for simulation: a wing tank of about 96 L under suction, read by hand or logged. */
import { instrument } from '../parts.ts'
import type { Setup } from './simulate.ts'

/** m³/s of 1 cm³/min. */
export const CCM = 1e-6 / 60
const PER_HOUR = 1 / 3600

/** As a maker states limits: half-width over √3. */
const limits = (halfWidth: number): number => halfWidth / Math.sqrt(3)

export const tank: Setup = {
  numbers: {
    test_pressure: -2500,
    volume: [0.0964, 0.0003],
    volume_compliance: [2e-8, 0.5e-8],
    thermal_expansion: [23e-6, 2e-6],
    temperature_error: 0.3,
    settle: 600,
    hold: 10_800,
  },
  instruments: {
    pressure: instrument('pg-1', {
      resolution: 1,
      gain: limits(0.004),
      offset: limits(4),
      drift: limits(2) * PER_HOUR,
    }),
    temperature: instrument('th-1', { resolution: 0.01, offset: limits(0.2) }),
    baro: instrument('ba-1', { resolution: 10, offset: limits(50), drift: limits(5) * PER_HOUR }),
  },
}

/** What the hangar does while the tank is read every five minutes. */
export const hangar = {
  every: 300,
  noise: 0.7,
  temperature_noise: 0.005,
  warming: 0.4,
  ambient_change: 80,
  start_pressure: -2900,
}

export const withNumbers = (setup: Setup, numbers: Setup['numbers']): Setup => ({
  ...setup,
  numbers: { ...setup.numbers, ...numbers },
})

export const withInstruments = (setup: Setup, instruments: Setup['instruments']): Setup => ({
  ...setup,
  instruments: { ...setup.instruments, ...instruments },
})

/** Logged at 1 Hz for 10 minutes in steady air. */
export const logged: Setup = withNumbers(tank, { settle: 0, hold: 600, temperature_error: 0.02 })
