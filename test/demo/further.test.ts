/**
 * The further methods in the demo. The readings are invented from a known truth (curve, decay, leak, unbalance …) by a
 * throwaway script that shares no code with the methods; each result must come back to that truth within its
 * uncertainty. Constants and sums are written out by hand.
 */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import {
  campaign,
  cardOf,
  criterion,
  heldBy,
  itemsAbout,
  measure,
  root,
  runOf,
  uncertainty,
} from './harness.ts'

const LITRE_PER_MINUTE = 1e-3 / 60
const FOOT = 0.3048
const KNOT = 1852 / 3600
const DEGREE = Math.PI / 180

/** Within the expanded uncertainty (k = 2.5: some of these have few degrees of freedom). */
const isNear = (run: string, name: string, truth: number) => {
  const u = uncertainty(run, name)
  expect(u, `u of ${name}`).toBeGreaterThan(0)
  expect(Math.abs(measure(run, name) - truth), name).toBeLessThan(2.5 * u)
}

test('every method has a card and a run that was judged', () => {
  const methods = readdirSync(join(root, 'src/methods'), {
    withFileTypes: true,
  })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
  const used = campaign.runs.filter((run) => run.verdict !== null).map((run) => run.card.method)
  expect([...new Set(used)].sort()).toEqual(methods.sort())
})

describe('tank structure under proof pressure', () => {
  const softened = '2026-02-25-1330-tank-structure-proof-right'
  const sound = '2026-02-27-1330-tank-structure-proof-right'

  test('the target is the weight of the fuel at the limit load factor and what the vent adds', () => {
    // 720 kg/m³ · 3.8 · 9.80665 m/s² · 0.25 m + 300 Pa = 7007.749 Pa (hand sum).
    const { value } = cardOf('tank-structure-proof', 'wing-left/tank').targets.target ?? {}
    expect(value?.value).toBeCloseTo(7007.749, 2)
  })
  test('a steady slip with 20° of bank presses the full tank less than the pull-up', () => {
    // 720 · 9.80665 · (sin 20° · 1.2 m + cos 20° · 0.25 m) = 4556.66 Pa (hand sum).
    const { value } = cardOf('tank-structure-proof', 'wing-left/tank').targets.slip ?? {}
    expect(value?.value).toBeCloseTo(4556.66, 1)
  })

  test('a rib that let go shows as softening of one station in the second loading, and nowhere else', () => {
    expect(runOf(softened).verdict).toBe('undetermined')
    expect(runOf(softened).reasons.join(' ')).toContain('`station_3` is softer')
    // The panel was made 30 % softer above 3.9 kPa; the others not at all.
    isNear(softened, 'softening_3', 1.3)
    for (const station of [1, 2, 4]) isNear(softened, `softening_${station}`, 1)
  })

  test('the bond was made again, and the second round passes', () => {
    const right = cardOf('tank-structure-proof', 'wing-right/tank')
    expect(right.rounds.map((round) => [round.status, round.begunBy?.id ?? null])).toEqual([
      ['undetermined', null],
      ['pass', '2026-02-25-1700-tank-right-rib-bond'],
    ])
    expect(runOf(sound).reasons).toEqual([])
    expect(measure(sound, 'softening_3')).toBeLessThan(1.02)
  })

  test('the air in it stores half a kilojoule', () => {
    // P V/(k−1)·(1 − (p/P)^((k−1)/k)), p = 101 kPa, P = p + 7291 Pa (highest reading), V = 96.4 L, k = 1.4:
    // 108291·0.0964/0.4·(1 − 0.932672^0.285714) = 514.60 J (hand sum).
    expect(measure('2026-02-26-1330-tank-structure-proof-left', 'stored_energy')).toBeCloseTo(514.6, 1)
  })

  test('it overtakes the leak check before it', () => {
    // The leak check of 24 February on the right tank passed; the structure proof of 25 February came first after it.
    expect(runOf('2026-02-24-0915-tank-leak-right').overtakenBy?.id).toBe(softened)
  })
})

describe('tank vents', () => {
  test('the flow that must come in is that of the ullage in the fastest descent, and what the engine draws', () => {
    // g₀/(R·T) at 3000 m, T = 268.65 K: 9.80665/(287.05287·268.65) = 1.271662e-4 1/m (U.S. Standard Atmosphere 1976).
    // 96.4 L · 1.271662e-4 1/m · 10 m/s + 0.4 L/min = 7.3553 + 0.4 = 7.7553 L/min (hand sum).
    const flow = measure('2026-02-16-1000-tank-vent-flow-left', 'required_flow_in') / LITRE_PER_MINUTE
    expect(flow).toBeCloseTo(7.7553, 3)
  })

  test.each([
    // Δp = f·(a·Q + b·Q²) with a in Pa/(L/min), b in Pa/(L/min)²: as the readings were made.
    ['2026-02-16-1000-tank-vent-flow-left', 7.7553, 1.04, 1.6, 1.05],
    ['2026-02-17-1000-tank-vent-flow-right', 7.7171, 1.05, 3.1, 4.75],
    ['2026-02-18-0930-tank-vent-flow-right', 7.7171, 1.03, 1.7, 1.12],
  ])('%s comes back to the curve it was made from', (run, flow, ways, a, b) => {
    isNear(run, 'drop_at_required_in', ways * (a * flow + b * flow * flow))
    isNear(run, 'direction_ratio', ways)
  })

  test('paint in the outlet failed the right one, and the rework is named', () => {
    const right = cardOf('tank-vent-flow', 'wing-right/tank')
    expect(right.rounds.map((round) => round.status)).toEqual(['fail', 'pass'])
    expect(right.rounds[1]?.begunBy?.id).toBe('2026-02-17-1600-tank-right-vent-outlet')
  })
})

describe('elevator', () => {
  const rubbing = '2026-04-07-1430-elevator-ring-down'
  const free = '2026-04-08-0900-elevator-ring-down'

  test('it rings where the stiffness runs say that it should', () => {
    // f = √(K/J)/2π, 1/K the give from load point to the aft arm of the bellcrank, J = 0.100 kg·m² (invented).
    const source = '2026-03-27-1020-elevator-stiffness'
    const give = measure(source, 'compliance_load_horn') + measure(source, 'compliance_horn_crank_aft')
    const expected = Math.sqrt(1 / give / 0.1) / (2 * Math.PI)
    expect(measure(free, 'frequency') / expected).toBeGreaterThan(0.95)
    expect(measure(free, 'frequency') / expected).toBeLessThan(1.05)
  })

  test('and the card says the same of itself', () => {
    const { derived, measures } = runOf(free).computed ?? {}
    const ratio = (measures?.natural_frequency?.value ?? 0) / (derived?.expected_frequency?.value ?? 0)
    expect(Math.abs(ratio - 1)).toBeLessThan(0.05)
    expect(criterion(free, 'as_stiff')?.verdict).toBe('pass')
  })

  test('a lead that rubs makes the damping look twice as large, and is found', () => {
    expect(runOf(rubbing).record.readings.rows).toBe(1000)
    expect(measure(rubbing, 'damping_ratio')).toBeGreaterThan(1.5 * 0.021)
    expect(runOf(rubbing).verdict).toBe('undetermined')
    expect(runOf(rubbing).reasons.join(' ')).toContain('friction')
  })

  test('without it frequency and damping come back to the truth', () => {
    // 22.35 Hz undamped, which rings at 22.35·√(1 − 0.0214²) = 22.3449 Hz; damping ratio 2.14 %.
    isNear(free, 'natural_frequency', 22.35)
    isNear(free, 'damping_ratio', 0.0214)
    expect(cardOf('elevator-ring-down', 'tailplane').status).toBe('pass')
  })

  test('it was tail-heavy by paint, and what must be added follows', () => {
    const heavy = '2026-03-04-1400-elevator-balance'
    isNear(heavy, 'unbalance', 0.0312)
    // 0.0312 kg·m at 110 mm: 284 g.
    isNear(heavy, 'weight_to_add', 0.0312 / 0.11)
    isNear('2026-03-06-0930-elevator-balance', 'unbalance', -0.0049)
    expect(cardOf('elevator-balance', 'tailplane').rounds.map((round) => round.status)).toEqual([
      'fail',
      'pass',
    ])
  })

  test('the down stop was set too far out, and the stop was corrected', () => {
    isNear('2026-03-30-0915-elevator-travel', 'down', 21.3 * DEGREE)
    expect(criterion('2026-03-30-0915-elevator-travel', 'up_in_tolerance')?.verdict).toBe('pass')
    expect(criterion('2026-03-30-0915-elevator-travel', 'down_in_tolerance')?.verdict).toBe('fail')
    const stop = campaign.records.reworks['2026-03-31-0930-elevator-down-stop']
    expect(stop?.changes).toEqual(['controls/elevator/stops'])
    expect(stop?.because).toEqual(['2026-03-30-0915-elevator-travel'])
    const { rounds } = cardOf('elevator-travel', 'controls/elevator')
    expect(rounds.map((round) => round.status)).toEqual(['fail', 'pass'])
  })
})

test('the rudder is read by its offset: an arc of 420 mm', () => {
  // Chord 2·r·sin(δ/2): 201.8 mm at 27.8°, 198.9 mm at 27.4° (hand sum).
  isNear('2026-04-02-1430-rudder-travel', 'left', 27.8 * DEGREE)
  isNear('2026-04-02-1430-rudder-travel', 'right', -27.4 * DEGREE)
})

describe('weighing before and after the bracket', () => {
  const [before, after] = ['2026-03-23-1500-empty-weight', '2026-03-26-1400-empty-weight'] as const

  test('the rework overtakes the first weighing', () => {
    expect(runOf(before).overtakenBy?.id).toBe('2026-03-25-1630-elevator-bracket')
    expect(cardOf('empty-weight', 'aircraft').round).toBe(2)
  })

  test('the scales find what the tags say: 0.648 kg on, 0.212 kg off, at 2.95 m', () => {
    const scatter = Math.hypot(measure(before, 'repeatability'), measure(after, 'repeatability'))
    // Gain and zero of the platforms are the same on both days. A mean of three on each of three platforms scatters as
    // one reading does.
    expect(Math.abs(measure(after, 'weight') - measure(before, 'weight') - 0.436)).toBeLessThan(2 * scatter)
    // 0.436 kg · (2.95 − 2.352) m / 487 kg = 0.54 mm aft (hand sum); the level is good to 0.2° on both days.
    const shift = measure(after, 'cg') - measure(before, 'cg')
    expect(Math.abs(shift - 0.00054)).toBeLessThan(0.002)
  })
})

describe('fuel flow', () => {
  test('half as much again as the engine takes: 0.5 L/min', () => {
    // 14 CFR 23.955(b), as before amendment 64: 150 % of 20 L/h = 30 L/h = 0.5 L/min.
    for (const run of ['2026-03-27-1330-fuel-flow-climb', '2026-03-27-1545-fuel-flow-steep'])
      expect(measure(run, 'required_flow') / LITRE_PER_MINUTE).toBeCloseTo(0.5, 9)
    isNear('2026-03-27-1330-fuel-flow-climb', 'flow', 10.4e-6)
    isNear('2026-03-27-1545-fuel-flow-steep', 'flow', 9.6e-6)
  })

  test('a run in which the tank ran dry is void, and still says what stayed behind', () => {
    const dry = '2026-03-27-1500-fuel-flow-steep'
    expect(runOf(dry).record.void?.why).toContain('ran dry')
    expect(runOf(dry).verdict).toBeNull()
    // 1.1 L in the tank less 68 s at 9.6 mL/s.
    isNear(dry, 'unusable', 1.1e-3 - 68 * 9.6e-6)
    expect(cardOf('fuel-flow-steep', 'wing-left/tank').rounds[0]?.counts).toMatchObject({ void: 1, pass: 1 })
  })

  test('the right tank has no fuel yet, so its flow was not run, and that holds the first flight', () => {
    expect(cardOf('fuel-flow-climb', 'wing-right/tank').status).toBe('not-run')
    const [item] = itemsAbout('fuel-flow-climb')
    expect(item?.kind).toBe('not-run')
    expect(heldBy('first-flight')).toContain(item?.id)
    expect(heldBy('taxi')).not.toContain(item?.id)
  })
})

describe('pitot and static lines', () => {
  test('a cut barb leaks more than the rule allows; the new T-piece does not', () => {
    // 14 CFR 23.1325(b)(2)(i), as before amendment 64: not more than 100 ft in a minute.
    isNear('2026-04-07-1110-static-line-leak', 'altitude_loss', 265 * FOOT)
    isNear('2026-04-08-1330-static-line-leak', 'altitude_loss', 22 * FOOT)
    const { rounds } = cardOf('static-line-leak', 'pitot-static')
    expect(rounds.map((round) => round.status)).toEqual(['fail', 'pass'])
  })

  test('the pitot line was not opened, and keeps its speed', () => {
    isNear('2026-04-08-1440-pitot-line-leak', 'airspeed_loss', 1.3 * KNOT)
    expect(cardOf('pitot-line-leak', 'pitot-static').round).toBe(1)
  })
})

describe('engine run-up', () => {
  test('the first was broken off and cannot pass; the second does', () => {
    const [first, second] = ['2026-03-30-1600-engine-run-up', '2026-03-31-1515-engine-run-up'] as const
    expect(runOf(first).record.stopped).toContain('glow')
    expect(runOf(first).verdict).toBe('undetermined')
    expect(runOf(second).verdict).toBe('pass')
  })

  test('what the card computes is what the table shows', () => {
    const run = '2026-03-31-1515-engine-run-up'
    const RPM = (2 * Math.PI) / 60
    // Read off the table: 2410, 2410, 2400 and 2400 at full power; 1800 on both, 1710 left, 1730 right.
    expect(measure(run, 'static_speed') / RPM).toBeCloseTo(2405, 6)
    expect(measure(run, 'drop_left') / RPM).toBeCloseTo(90, 6)
    expect(measure(run, 'drop_right') / RPM).toBeCloseTo(70, 6)
    expect(measure(run, 'oil_lowest')).toBeCloseTo(2.5e5, 3)
    expect(measure(run, 'oil_hottest') - 273.15).toBeCloseTo(95, 6)
    expect(measure(run, 'head_hottest') - 273.15).toBeCloseTo(134, 6)
  })
})

describe('restraints', () => {
  // 215 lb is heavier than our 95 kg: 1.33 · 9 · 97.52236 kg · 9.80665 m/s² = 11447.72 N. Lap belt worn alone, each
  // side: half of it times √(170² + 30² + 240²)/170 = 9953.9 N; 60 % of that with the harness; shoulder 40 % at
  // √(380² + 60² + 120²)/380 = 2428.05 N (hand sums).
  test.each([
    ['forward_load', 11_447.72],
    ['lap_anchor_alone', 9953.9],
    ['lap_anchor', 5972.4],
    ['shoulder_anchor', 2428.05],
  ])('%s is %d N', (name, expected) => {
    const { derived } = runOf('2026-03-20-0910-restraint-inspection').computed ?? {}
    expect((derived?.[name]?.value ?? 0) / expected).toBeCloseTo(1, 4)
  })
})
