import { describe, expect, it } from 'vitest'
import { campaignOf, card, item, kinds, meeting, rework, run, scale } from './small.ts'

const CY = '2026-03-01-0900-pull'

describe('a sound campaign', () => {
  it('has nothing open and a gate that is clear', () => {
    const campaign = campaignOf(run('2026-03-01'))
    expect(campaign.problems).toEqual([])
    expect(campaign.cards[0]?.status).toBe('pass')
    expect(kinds(campaign)).toEqual([])
    expect(campaign.gates[0]).toMatchObject({ state: 'clear', heldBy: [] })
  })
})

describe('items that follow from the status of a card', () => {
  it.each([
    ['not run', [], 'not-run', 'not-run'],
    ['load not reached', [run('2026-03-01', 90)], 'fail', 'failed-criterion'],
    ['load just at the target', [run('2026-03-01', 100.3)], 'undetermined', 'undetermined-criterion'],
    ['broken off', [run('2026-03-01', 110, { stopped: 'a bang' })], 'undetermined', 'undetermined-criterion'],
    ['reworked since', [run('2026-03-01'), rework('2026-03-02')], 'due-again', 'due-again'],
    ['one run of two', [card({ 'runs-per-round': '2' }), run('2026-03-01')], 'undetermined', 'too-few-runs'],
  ] as const)('%s', (_, parts, status, kind) => {
    const campaign = campaignOf(...parts)
    expect(campaign.cards[0]?.status).toBe(status)
    expect(kinds(campaign)).toContain(kind)
    expect(campaign.gates[0]?.state).toBe('held')
  })

  it('a rework of another part, or one that says why not, leaves the pass', () => {
    expect(
      campaignOf(
        card({ covers: '[hook]' }),
        run('2026-03-01'),
        rework('2026-03-02', { changes: '[frame/lug]' }),
      ).cards[0]?.status,
    ).toBe('pass')
    const unaffected = '[{card: pull, why: paint only, agreed: cy}]'
    expect(campaignOf(run('2026-03-01'), rework('2026-03-02', { unaffected })).cards[0]?.status).toBe('pass')
  })
  it('a void run has no verdict, keeps what it would have had, and does not count', () => {
    const campaign = campaignOf(
      run('2026-03-01', 110, { void: '{why: wrong hook, by: ann, when: 2026-03-01T11:00+01:00}' }),
    )
    expect(campaign.runs[0]).toMatchObject({ verdict: null, wouldBe: 'pass' })
    expect(campaign.cards[0]?.status).toBe('not-run')
  })
  it('five tries at the limit are pooled, not picked from', () => {
    const tries = ['01', '02', '03', '04', '05'].map((day) => run(`2026-03-${day}`, 100 + Number(day) / 10))
    const campaign = campaignOf(...tries)
    expect(campaign.cards[0]?.rounds[0]?.counts.pass).toBe(0)
    expect(campaign.cards[0]?.status).toBe('undetermined')
  })
  it('a finer scale settles what a coarse one left open', () => {
    const fine = scale({ accuracy: '± 0.02 N' })['shared/instruments/lc.md'] ?? ''
    const campaign = campaignOf(
      { 'shared/instruments/fine.md': fine },
      run('2026-03-01', 100.2),
      run('2026-03-02', 100.5, { instruments: '{load: fine}' }),
    )
    expect(campaign.runs.map((each) => each.verdict)).toEqual(['undetermined', 'pass'])
    expect(campaign.cards[0]?.status).toBe('pass')
  })
})

describe('items about the evidence', () => {
  it.each([
    [
      'calibration lapsed',
      [
        scale({ calibrations: '[{on: 2025-01-10, due: 2026-01-10, by: lab, certificate: C-1}]' }),
        run('2026-03-01'),
      ],
      'calibration',
    ],
    ['never calibrated', [scale({ calibrations: '[]' }), run('2026-03-01')], 'calibration'],
    ['beyond the range', [scale({ range: '0 N .. 105 N' }), run('2026-03-01')], 'out-of-range'],
    ['worse than asked', [scale({ resolution: '1 N' }), run('2026-03-01', 120)], 'instrument-worse'],
    ['beyond the stop value', [run('2026-03-01', 155)], 'beyond-stop'],
    [
      'found wrong later',
      [
        scale({
          calibrations:
            '[{on: 2026-01-10, due: 2027-01-10, by: lab, certificate: C-1}, {on: 2026-03-20, due: 2027-03-20, by: lab, certificate: C-2, found-out: reads 3 N too much}]',
        }),
        run('2026-03-01'),
      ],
      'instrument-found-wrong',
    ],
    ['copied readings', [run('2026-03-01'), run('2026-03-02')], 'same-readings'],
    ['one person in two roles', [run('2026-03-01', 110, { witness: 'ann' })], 'two-roles'],
    [
      'a deviation that nobody agreed',
      [run('2026-03-01', 110, { deviations: '[{from: step 2, what: shorter, why: late}]' })],
      'deviation',
    ],
    [
      'something left fitted',
      [run('2026-03-01', 110, { fitted: '[{id: pin, what: a pin}]' })],
      'not-removed',
    ],
  ] as const)('%s', (_, parts, kind) => {
    const campaign = campaignOf(...parts)
    expect(campaign.problems.filter((problem) => problem.severity === 'error')).toEqual([])
    expect(kinds(campaign)).toContain(kind)
    expect(campaign.gates[0]?.state).toBe('held')
  })

  it('close when the facts close them', () => {
    expect(
      kinds(
        campaignOf(
          run('2026-03-01', 110, { fitted: '[{id: pin, what: a pin}]' }),
          rework('2026-02-01', { removed: `[${CY}#pin]` }),
        ),
      ),
    ).toEqual([])
    const looked = item('looked', {
      about: `[${CY}]`,
      closed: '{when: 2026-03-02T10:00+01:00, by: cy, how: looked at, evidence: []}',
    })
    expect(kinds(campaignOf(run('2026-03-01', 155), looked))).toEqual([])
  })
  it('do not hold anything once their round is overtaken', () => {
    const campaign = campaignOf(
      run('2026-03-01', 110, { witness: 'ann' }),
      rework('2026-03-02'),
      run('2026-03-03', 112),
    )
    expect(kinds(campaign)).toEqual([])
  })
})

describe('concessions', () => {
  const granted = {
    kind: 'concession',
    criterion: 'reached',
    run: CY,
    agreed: 'cy',
    until: 'round',
    about: `[${CY}]`,
  }
  it('settle a failing criterion while they are in force', () => {
    const campaign = campaignOf(run('2026-03-01', 90), item('accepted', granted))
    expect(campaign.cards[0]?.status).toBe('conceded')
    expect(campaign.gates[0]?.state).toBe('clear')
  })
  it('do not when they have run out, or were signed by somebody who may not', () => {
    const late = campaignOf(run('2026-03-01', 90), item('accepted', { ...granted, until: '2026-03-15' }))
    expect(late.cards[0]?.status).toBe('fail')
    expect(kinds(late)).toContain('concession-expired')
    expect(
      campaignOf(run('2026-03-01', 90), item('accepted', { ...granted, agreed: 'ann' })).cards[0]?.status,
    ).toBe('fail')
  })
})

describe('gates', () => {
  it('are released by a go while they were clear', () => {
    expect(campaignOf(run('2026-03-01'), meeting('2026-03-05')).gates[0]).toMatchObject({
      state: 'released',
      overtaken: false,
    })
  })
  it('are not by a go before the card had passed, nor by a no-go', () => {
    expect(campaignOf(run('2026-03-06'), meeting('2026-03-05')).gates[0]?.state).toBe('clear')
    expect(campaignOf(run('2026-03-01'), meeting('2026-03-05', { decision: 'no-go' })).gates[0]?.state).toBe(
      'clear',
    )
  })
  it('stay released and are overtaken when a card becomes due again', () => {
    expect(campaignOf(run('2026-03-01'), meeting('2026-03-05'), rework('2026-03-10')).gates[0]).toMatchObject(
      { state: 'released', overtaken: true },
    )
  })
  it('with conditions are released once these are settled', () => {
    const condition = { gates: '[fly]', about: '[pull]' }
    const meetingWith = meeting('2026-03-15', { decision: 'go with conditions', conditions: '[paint]' })
    expect(campaignOf(run('2026-03-01'), item('paint', condition), meetingWith).gates[0]?.state).toBe('held')
    const closed = {
      ...condition,
      closed: '{when: 2026-03-20T10:00+01:00, by: cy, how: painted, evidence: []}',
    }
    expect(campaignOf(run('2026-03-01'), item('paint', closed), meetingWith).gates[0]?.state).toBe('released')
  })
  it('say when what the minutes were based on comes out differently', () => {
    const basis = `[{run: ${CY}, criterion: reached, verdict: pass, value: 1.4, U: 0.01}]`
    expect(kinds(campaignOf(run('2026-03-01'), meeting('2026-03-05', { basis })))).toContain('basis-differs')
    const right = `[{run: ${CY}, criterion: reached, verdict: pass, value: 1.100, U: 0.01}]`
    expect(kinds(campaignOf(run('2026-03-01'), meeting('2026-03-05', { basis: right })))).toEqual([])
  })
})

describe('broken files', () => {
  it('an instrument whose file has errors lets no run pass on it', () => {
    const campaign = campaignOf(scale({ resolution: 'fine' }), run('2026-03-01'))
    expect(campaign.runs[0]).toMatchObject({ verdict: 'undetermined', computed: null })
    expect(campaign.gates[0]?.state).toBe('held')
  })
})
