import { expect, test } from 'vitest'
import { call, near, refusal } from './call.ts'

// A worked example of vibration courses (m 8 kg, s 5,400 N/m, c 40 N·s/m: fd 4.115779 Hz, ζ 0.09622504), whose
// equation is that of a rotation with N·m/rad and kg·m²: fn = fd/√(1 − ζ²).
test('5,400 N·m/rad and 8 kg·m² ring at 4.115779 Hz/√(1 − 0.09622504²)', () => {
  near(call('surface_frequency', 5400, 8), 4.115779 / Math.sqrt(1 - 0.09622504 ** 2), 1e-6)
})

test('1,000 N·m/rad and 0.1 kg·m² turn at 100 rad/s (by hand)', () => {
  near(call('surface_frequency', 1000, 0.1), 100 / (2 * Math.PI), 1e-15)
})

// I·δ̈ = −K·δ stepped by hand: leapfrog, from rest at 0.1 rad until the surface first passes neutral, a quarter period.
test('the equation of motion stepped through agrees', () => {
  const [stiffness, inertia, step] = [740, 0.13, 1e-6]
  let [angle, rate, time] = [0.1, 0, 0]
  while (angle > 0) {
    rate -= (stiffness / inertia) * angle * step
    angle += rate * step
    time += step
  }
  near(call('surface_frequency', stiffness, inertia), 1 / (4 * time), 1e-4)
})

test('limits: no stiffness, no frequency; four times the stiffness, twice the frequency; a balance weight slows it', () => {
  expect(call('surface_frequency', 0, 0.1)).toBe(0)
  near(call('surface_frequency', 4000, 0.1), 2 * call('surface_frequency', 1000, 0.1), 1e-15)
  expect(call('surface_frequency', 1000, 0.1 + 0.8 * 0.12 ** 2)).toBeLessThan(
    call('surface_frequency', 1000, 0.1),
  )
})

test('what has no frequency is refused in words', () => {
  expect(refusal('surface_frequency', 1000, 0)).toMatch(/moment of inertia/)
  expect(refusal('surface_frequency', -1, 0.1)).toMatch(/negative stiffness/)
})
