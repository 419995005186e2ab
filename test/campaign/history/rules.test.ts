/** What follows from history, rule by rule, over histories made by hand. */
import { describe, expect, it } from 'vitest'
import type { Campaign, ItemKind, OpenItem } from '../../../src/campaign/types.ts'
import { BASE, campaignOf, card, item, kinds, meeting, rework, run, scale } from '../small.ts'
import { blobOf, campaignOfStory, commitOf, type Files, review, type Story } from './story.ts'

const RUN = 'records/runs/2026-03/2026-03-01-0900-pull.md'
const CARD = 'shared/cards/pull.md'
const ID = '2026-03-01-0900-pull'
const limit = (accept: string): Files => card({ criteria: `{reached: {accept: ${accept}, why: invented}}` })
const textOf = (files: Files, path: string): string => files[path] ?? ''

/** Card in January, run in March, and a review of the run. */
const sound = (files: Files = run('2026-03-01'), path = RUN): Story['steps'] => [
  { day: '2026-01-15', by: 'cy' },
  { day: '2026-03-02', files },
  review('2026-03-03', 'cy', { [path]: textOf(files, path) }),
]
const only = (campaign: Campaign) => campaign.runs[0]
const itemOf = (campaign: Campaign, kind: ItemKind): OpenItem | undefined =>
  campaign.items.find((each) => each.kind === kind)

describe('a run that landed and was reviewed', () => {
  const campaign = campaignOfStory({ steps: sound() })
  it('leaves nothing open', () => {
    expect(campaign.problems).toEqual([])
    expect(kinds(campaign)).toEqual([])
    expect(campaign.gates[0]?.state).toBe('clear')
  })
  it('says who recorded it, when it landed and who reviewed it how', () => {
    expect(only(campaign)?.provenance).toMatchObject({
      recorded: { commit: commitOf(1), by: 'ann', when: '2026-03-02T12:00:00+01:00' },
      landed: { commit: commitOf(1), when: '2026-03-02T12:00:00+01:00' },
      reviewed: [{ by: 'cy', how: 'trailer', commit: commitOf(2) }],
      notCounted: [],
      signature: 'none',
      changes: [],
      state: 'landed',
    })
  })
  it('was judged by the card that is there', () => {
    expect(only(campaign)?.asRun).toMatchObject({
      verdict: 'pass',
      revision: commitOf(0),
      writtenAfter: false,
      togetherWithRun: false,
      differs: [],
      counts: false,
    })
  })
})

describe('without history', () => {
  const files = run('2026-03-01')
  it('nobody asked: nothing is said, nothing is shown as reviewed or unchanged', () => {
    const campaign = campaignOf(files)
    expect(campaign.problems).toEqual([])
    expect(only(campaign)?.provenance).toMatchObject({ state: 'unknown', reviewed: [], changes: null })
    expect(only(campaign)?.asRun).toBeNull()
    expect(kinds(campaign)).toEqual([])
  })
})

describe('reviews', () => {
  const mine = run('2026-03-01')
  const unreviewed = (steps: Story['steps'], more: Omit<Story, 'steps'> = {}) => {
    const campaign = campaignOfStory({ steps, ...more })
    expect(itemOf(campaign, 'not-reviewed')?.title).toContain(ID)
    expect(campaign.gates[0]?.state).toBe('held')
    return only(campaign)?.provenance
  }
  const start = sound().slice(0, 2)

  it('are missing', () => {
    expect(unreviewed(start)?.reviewed).toEqual([])
  })
  it('of an own run do not count, even by a person who may review', () => {
    const own = run('2026-03-01', 110, { by: '[cy]' })
    const steps = [{ day: '2026-01-15' }, { day: '2026-03-02', files: own }]
    const told = [...steps, review('2026-03-03', 'cy', { [RUN]: textOf(own, RUN) })]
    expect(unreviewed(told)?.notCounted).toMatchObject([{ by: 'cy', reason: 'own work' }])
  })
  it('by a person without the role, or nobody that is known, do not count', () => {
    const text = { [RUN]: textOf(mine, RUN) }
    const told = [...start, review('2026-03-03', 'bob', text), review('2026-03-03', 'eve', text)]
    expect(unreviewed(told)?.notCounted).toMatchObject([
      { by: 'bob', reason: 'without the role review' },
      { by: 'eve@example.org', reason: 'not in people.yaml' },
    ])
  })
  it('of older content do not count', () => {
    const amended = run('2026-03-01', 110, { rig: '{id: rig-3}' })
    const told = [...sound(), { day: '2026-03-04', files: amended }]
    const campaign = campaignOfStory({ steps: told })
    expect(only(campaign)?.provenance).toMatchObject({
      reviewed: [],
      notCounted: [{ by: 'cy', reason: 'of older content' }],
    })
  })
  it('of a kind that the campaign does not accept do not count', () => {
    const settings = {
      'shared/campaign.yaml': textOf(BASE, 'shared/campaign.yaml').replace('[trailer]', '[forge]'),
    }
    const [first, ...rest] = sound()
    const provenance = unreviewed([{ ...first, day: '2026-01-15', files: settings }, ...rest])
    expect(provenance?.notCounted).toMatchObject([
      { how: 'trailer', reason: 'this kind of review is not accepted here' },
    ])
  })
  it('in a commit with a good signature of the reviewer are signed; of another key they are a trailer; with a bad one nothing', () => {
    const signed = (more: object) => {
      const steps = [...start, review('2026-03-03', 'cy', { [RUN]: textOf(mine, RUN) }, more)]
      return only(campaignOfStory({ steps }))?.provenance
    }
    expect(signed({ signature: 'good', signer: 'cy@example.org' })?.reviewed).toMatchObject([
      { how: 'signed' },
    ])
    expect(signed({ signature: 'good', signer: 'bob@example.org' })?.reviewed).toMatchObject([
      { how: 'trailer' },
    ])
    expect(signed({ signature: 'bad' })).toMatchObject({
      reviewed: [],
      notCounted: [{ reason: 'the signature is bad' }],
    })
  })
  describe('on the forge', () => {
    const people = {
      'shared/people.yaml': textOf(BASE, 'shared/people.yaml').replace('name: Cy', 'name: Cy\n  login: Cy-T'),
    }
    const settings = {
      'shared/campaign.yaml': textOf(BASE, 'shared/campaign.yaml').replace('trailer', 'forge'),
    }
    const steps = [{ day: '2026-01-15', files: { ...people, ...settings } }, ...start.slice(1)]
    const pull = (blob: string) => ({
      number: 7,
      commits: [commitOf(1)],
      approvals: [{ login: 'cy-t', commit: 'b'.repeat(40), when: '2026-03-02T10:00:00Z' }],
      files: { [RUN]: blob },
    })
    it('count by the content that was approved', () => {
      const campaign = campaignOfStory({ steps, pulls: [pull(blobOf(textOf(mine, RUN)))] })
      expect(only(campaign)?.provenance.reviewed).toMatchObject([{ by: 'cy', how: 'forge' }])
      expect(kinds(campaign)).toEqual([])
    })
    it('of another content do not', () => {
      expect(unreviewed(steps, { pulls: [pull(blobOf('other'))] })?.notCounted).toMatchObject([
        { by: 'cy', reason: 'of older content' },
      ])
    })
    it('do not cover a data file that changed later', () => {
      const readings = '\n  file: 2026-03-01-0900-pull.csv'
      const logged = run('2026-03-01', 110, { readings })
      const data = RUN.replace('.md', '.csv')
      const csv = 'time,load\ns,N\n0,0.0\n10,110.0\n20,110.0\n30,0.0\n'
      const first = { day: '2026-03-02', files: { ...logged, [data]: csv } }
      const approved = { ...pull(blobOf(textOf(logged, RUN))) }
      const base = [steps[0] ?? { day: '2026-01-15' }, first]
      const sound = campaignOfStory({ steps: base, pulls: [approved] })
      expect(sound.problems.filter(({ severity }) => severity === 'error')).toEqual([])
      expect(only(sound)?.provenance.reviewed).toHaveLength(1)
      const changed = campaignOfStory({
        steps: [...base, { day: '2026-03-05', files: { [data]: csv.replace('20,110.0', '20,111.0') } }],
        pulls: [approved],
      })
      expect(only(changed)?.provenance).toMatchObject({
        reviewed: [],
        changes: [{ at: 'readings row 3 column load', before: '110.0', after: '111.0', amended: false }],
      })
      expect(kinds(changed)).toContain('changed')
    })
  })
  it('are not asked for where the campaign says so', () => {
    const settings = {
      'shared/campaign.yaml': textOf(BASE, 'shared/campaign.yaml').replace('[trailer]', '[]'),
    }
    const [first, ...rest] = start
    expect(
      kinds(campaignOfStory({ steps: [{ ...first, day: '2026-01-15', files: settings }, ...rest] })),
    ).toEqual([])
  })
  it('are asked of proposed and uncommitted runs in fitting words', () => {
    const proposed = campaignOfStory({
      steps: [{ day: '2026-01-15' }, { day: '2026-03-02', files: mine, proposed: true }],
    })
    expect(only(proposed)?.provenance).toMatchObject({ state: 'proposed', landed: null })
    expect(itemOf(proposed, 'not-reviewed')?.title).toContain('is proposed')
    const uncommitted = campaignOfStory({ steps: [{ day: '2026-01-15' }], now: mine })
    expect(only(uncommitted)?.provenance).toMatchObject({ state: 'uncommitted', recorded: null })
    expect(itemOf(uncommitted, 'not-reviewed')?.title).toContain('not committed yet')
  })
  it('by the witness alone make one person fill two roles', () => {
    const seen = run('2026-03-01', 110, { witness: 'cy' })
    expect(kinds(campaignOfStory({ steps: sound(seen) }))).toEqual(['two-roles'])
  })
})

describe('what is protected after landing', () => {
  it('prose, pictures and the layout of the fields may change', () => {
    const text = textOf(run('2026-03-01'), RUN)
    const laid = text
      .replace('card: pull', 'card: "pull"')
      .replace('by: [ann]', 'by:\n  - ann')
      .replace('10    110.0', '10  110.0')
      .replace('Invented.', 'Invented, and told at more length.')
      .replaceAll('\n', '\r\n')
    expect(laid).not.toBe(text)
    const campaign = campaignOfStory({ steps: sound(), now: { [RUN]: laid } })
    expect(only(campaign)?.provenance.changes).toEqual([])
    expect(kinds(campaign)).not.toContain('changed')
  })

  const amended = (was: string) =>
    run('2026-03-01', 110, {
      readings: '|\n  time  load\n  s     N\n  0     0.0\n  10    110.0\n  20    110.0\n  30    0.0',
      amendments: `[{when: 2026-03-05T10:00+01:00, by: ann, at: Readings  row 2 column load, was: ${was}, why: misread}]`,
    })
  const failing = run('2026-03-01', 90, {
    readings: '|\n  time  load\n  s     N\n  0     0.0\n  10    90.0\n  20    110.0\n  30    0.0',
  })

  it('a reading changed without an amendment holds the gate with before and after, and the worse verdict counts', () => {
    const steps = [...sound(run('2026-03-01', 90)), { day: '2026-03-06', files: run('2026-03-01', 110) }]
    const campaign = campaignOfStory({ steps })
    const changed = itemOf(campaign, 'changed')
    expect(changed).toMatchObject({ gates: ['fly'], since: '2026-03-06', id: `changed.${ID}` })
    expect(changed?.title).toContain('readings row 2 column load was 90.0, is now 110.0')
    expect(only(campaign)).toMatchObject({
      presentVerdict: 'pass',
      verdict: 'fail',
      asLanded: { verdict: 'fail' },
    })
    expect(campaign.cards[0]?.status).toBe('fail')
  })
  it('a change that is not committed is seen, too', () => {
    const campaign = campaignOfStory({ steps: sound(run('2026-03-01', 90)), now: run('2026-03-01', 110) })
    expect(itemOf(campaign, 'changed')?.since).toBe('2026-04-01')
    expect(only(campaign)?.verdict).toBe('fail')
  })
  it('a change that is amended waits for a review, and then replaces', () => {
    const now = amended('90.0')
    const steps = [...sound(failing), { day: '2026-03-06', files: now }]
    const open = campaignOfStory({ steps })
    expect(kinds(open)).toEqual(['amendment-unreviewed', 'failed-criterion'])
    expect(open.problems).toEqual([])
    const done = campaignOfStory({
      steps: [...steps, review('2026-03-07', 'cy', { [RUN]: textOf(now, RUN) })],
    })
    expect(kinds(done)).toEqual([])
    expect(only(done)?.provenance.changes).toEqual([
      { at: 'readings row 2 column load', before: '90.0', after: '110.0', amended: true },
    ])
  })
  it('an amendment that says another old value does not cover it', () => {
    const campaign = campaignOfStory({
      steps: [...sound(failing), { day: '2026-03-06', files: amended('91.0') }],
    })
    expect(kinds(campaign)).toContain('changed')
  })
  it('an amendment that names nothing that changed is a warning at its place', () => {
    const now = amended('90.0')[RUN]?.replace('Readings  row 2', 'readings row 9') ?? ''
    const campaign = campaignOfStory({
      steps: [...sound(failing), { day: '2026-03-06', files: { [RUN]: now } }],
    })
    expect(campaign.problems).toMatchObject([
      { code: 'history/amendment', severity: 'warning', expected: ['readings row 2 column load'] },
    ])
  })
  it('reverting a value leaves nothing, and its amendments are no slips', () => {
    const steps = [...sound(failing), { day: '2026-03-06', files: amended('90.0') }]
    const back = textOf(amended('90.0'), RUN).replace('10    110.0', '10    90.0')
    const campaign = campaignOfStory({ steps: [...steps, { day: '2026-03-08', files: { [RUN]: back } }] })
    expect(campaign.problems).toEqual([])
    expect(only(campaign)?.provenance.changes).toEqual([])
  })
})

describe('voided and gone', () => {
  const void_ = { void: '{why: wrong hook, by: ann, when: 2026-03-05T11:00+01:00}' }
  it('a run voided after landing blocks until that is reviewed, and shows what it would be', () => {
    const failed = run('2026-03-01', 90)
    const now = run('2026-03-01', 90, void_)
    const steps = [...sound(failed), { day: '2026-03-05', files: now }]
    const campaign = campaignOfStory({ steps })
    expect(itemOf(campaign, 'voided')?.title).toContain('would be fail')
    expect(only(campaign)).toMatchObject({ verdict: null, wouldBe: 'fail' })
    const reviewed = [...steps, review('2026-03-06', 'cy', { [RUN]: textOf(now, RUN) })]
    expect(kinds(campaignOfStory({ steps: reviewed }))).toEqual(['not-run'])
  })
  it('taking the voiding back is a change', () => {
    const steps = [
      ...sound(run('2026-03-01', 90, void_)),
      { day: '2026-03-05', files: run('2026-03-01', 90) },
    ]
    expect(itemOf(campaignOfStory({ steps }), 'changed')?.title).toContain('void was why: wrong hook')
  })
  it('a failing run that is gone stays, counts, and holds the gate', () => {
    const steps = [
      ...sound(run('2026-03-01', 90)),
      { day: '2026-03-09', by: 'bob', files: { [RUN]: null, ...run('2026-03-08', 110) } },
    ]
    const campaign = campaignOfStory({ steps })
    expect(campaign.runs.map(({ id, verdict }) => [id, verdict])).toEqual([
      [ID, 'fail'],
      ['2026-03-08-0900-pull', 'pass'],
    ])
    expect(only(campaign)).toMatchObject({
      gone: { commit: commitOf(3), when: '2026-03-09T12:00:00+01:00', by: 'bob' },
      provenance: { state: 'landed' },
    })
    expect(campaign.cards[0]?.status).toBe('fail')
    expect(itemOf(campaign, 'run-gone')).toMatchObject({ gates: ['fly'], since: '2026-03-09' })
    expect(kinds(campaign)).not.toContain('changed')
  })
  it('so does one whose file is gone and that is not committed', () => {
    const campaign = campaignOfStory({ steps: sound(), now: { [RUN]: null } })
    expect(only(campaign)?.gone).toEqual({ commit: null, when: null, by: null })
    expect(kinds(campaign)).toContain('run-gone')
  })
  it('and one whose name was given to another file', () => {
    const moved = { [RUN]: null, 'shared/articles/2026-03-01-0900-pull.md': '---\ntitle: Hook\n---\n' }
    const campaign = campaignOfStory({
      steps: [...sound(run('2026-03-01', 90)), { day: '2026-03-09', files: moved }],
    })
    expect(itemOf(campaign, 'run-gone')?.title).toContain('another file has its name')
    expect(campaign.gates[0]?.state).toBe('held')
  })
  it('even where its card went with it', () => {
    const files = {
      [RUN]: null,
      [CARD]: null,
      'shared/gates/fly.md': '---\ntitle: Fly\norder: 1\ncards: []\n---\n',
    }
    const campaign = campaignOfStory({
      steps: [...sound(run('2026-03-01', 90)), { day: '2026-03-09', files }],
    })
    expect(kinds(campaign)).toEqual(['off-gate', 'run-gone'])
    expect(itemOf(campaign, 'run-gone')?.gates).toEqual(['fly'])
  })
  it('put back, nothing is left of it', () => {
    const files = run('2026-03-01')
    const steps = [...sound(), { day: '2026-03-09', files: { [RUN]: null } }, { day: '2026-03-10', files }]
    expect(kinds(campaignOfStory({ steps }))).toEqual([])
  })
  it('a run that never landed may go', () => {
    const steps = [
      { day: '2026-01-15' },
      { day: '2026-03-02', files: run('2026-03-01', 90), proposed: true },
      { day: '2026-03-03', files: { [RUN]: null }, proposed: true },
    ]
    expect(kinds(campaignOfStory({ steps }))).toEqual(['not-run'])
  })
})

describe('the card as run against the card of today', () => {
  // 105 N of 100 N: a ratio of 1.05.
  const made = run('2026-03-01', 105)
  const moved = (accept: string, more: Story['steps'] = []) => {
    const steps = [...sound(made), { day: '2026-03-10', by: 'cy', files: limit(accept) }, ...more]
    return campaignOfStory({
      steps: [{ ...steps[0], day: '2026-01-15', files: limit('peak_ratio >= 1.1') }, ...steps.slice(1)],
    })
  }
  const reviewed = (accept: string, by = 'cy') =>
    review('2026-03-11', by, { [CARD]: textOf(limit(accept), CARD) })

  it('a limit relaxed after the run: the old one counts, and says so', () => {
    const campaign = moved('peak_ratio >= 1')
    expect(only(campaign)).toMatchObject({ presentVerdict: 'pass', verdict: 'fail' })
    expect(only(campaign)?.asRun).toMatchObject({
      verdict: 'fail',
      revision: commitOf(0),
      differs: [CARD],
      shifts: [{ criterion: 'reached', is: 'laxer' }],
      counts: true,
    })
    expect(itemOf(campaign, 'limit-moved')).toMatchObject({ gates: ['fly'], about: [ID, 'pull'] })
    expect(campaign.cards[0]?.status).toBe('fail')
    expect(only(campaign)?.reasons.join()).toContain('counts until the change is reviewed')
    expect(campaign.cards[0]?.versions).toMatchObject([
      {
        commit: commitOf(0),
        when: '2026-01-15T12:00:00+01:00',
        by: 'cy',
        criteria: { reached: 'peak_ratio >= 1.1' },
      },
      {
        commit: commitOf(3),
        when: '2026-03-10T12:00:00+01:00',
        by: 'cy',
        criteria: { reached: 'peak_ratio >= 1' },
      },
    ])
  })
  it('relaxed and reviewed: the correction replaces', () => {
    const campaign = moved('peak_ratio >= 1', [reviewed('peak_ratio >= 1')])
    expect(only(campaign)).toMatchObject({ verdict: 'pass', asRun: { verdict: 'fail', counts: false } })
    expect(kinds(campaign)).toEqual([])
  })
  it('reviewed by the one who made the run, or by one without the role: it does not', () => {
    const own = run('2026-03-01', 105, { by: '[cy]' })
    const steps = [
      { day: '2026-01-15', files: limit('peak_ratio >= 1.1') },
      { day: '2026-03-02', files: own },
      { day: '2026-03-10', files: limit('peak_ratio >= 1') },
      reviewed('peak_ratio >= 1'),
    ]
    expect(only(campaignOfStory({ steps }))?.verdict).toBe('fail')
    expect(only(moved('peak_ratio >= 1', [reviewed('peak_ratio >= 1', 'bob')]))?.verdict).toBe('fail')
  })
  it('a review of an older state of the card does not count for the one of today', () => {
    expect(only(moved('peak_ratio >= 1', [reviewed('peak_ratio >= 1.02')]))?.verdict).toBe('fail')
  })
  it('relaxed a little, verdict unchanged: the margin grew, so it is said', () => {
    const campaign = moved('peak_ratio >= 1.09')
    expect(only(campaign)?.verdict).toBe('fail')
    expect(kinds(campaign)).toContain('limit-moved')
  })
  it('relaxed before the run: it is the card as run', () => {
    const steps = [
      { day: '2026-01-15', files: limit('peak_ratio >= 1.1') },
      { day: '2026-02-10', files: limit('peak_ratio >= 1') },
      { day: '2026-03-02', files: made },
      review('2026-03-03', 'cy', { [RUN]: textOf(made, RUN) }),
    ]
    const campaign = campaignOfStory({ steps })
    expect(only(campaign)?.asRun).toMatchObject({ revision: commitOf(1), differs: [] })
    expect(kinds(campaign)).toEqual([])
  })
  it('tightened after the run: the new one counts, and no limit was moved in favour', () => {
    const campaign = moved('peak_ratio >= 1.2')
    expect(only(campaign)).toMatchObject({ verdict: 'fail', asRun: { shifts: [{ is: 'stricter' }] } })
    expect(kinds(campaign)).not.toContain('limit-moved')
  })
  it('another formula cannot be compared: both are shown, the worse counts', () => {
    const campaign = moved('peak_ratio + 0 * peak_ratio >= 1')
    expect(only(campaign)?.verdict).toBe('fail')
    const gone = campaignOfStory({
      steps: [
        {
          day: '2026-01-15',
          files: card({
            criteria:
              '{hard: {accept: peak_ratio >= 1.1, why: x}, reached: {accept: peak_ratio >= 1, why: x}}',
          }),
        },
        ...sound(made).slice(1),
        { day: '2026-03-10', files: limit('peak_ratio >= 1') },
      ],
    })
    expect(only(gone)?.asRun?.shifts).toEqual([
      { criterion: 'reached', is: 'same' },
      { criterion: 'hard', is: 'not comparable' },
    ])
    expect(only(gone)).toMatchObject({ verdict: 'fail', presentVerdict: 'pass' })
    expect(only(gone)?.counting.map(({ criterion, verdict }) => [criterion, verdict])).toEqual([
      ['reached', 'pass'],
      ['hard', 'fail'],
    ])
    expect(kinds(gone)).toEqual(['failed-criterion', 'limit-moved'])
  })
  it('prose, owner and title of a card judge nothing', () => {
    const files = { [CARD]: textOf(card({ owner: 'bob', title: 'Pull' }), CARD).replace('Invented', 'Told') }
    const campaign = campaignOfStory({ steps: [...sound(), { day: '2026-03-10', files }] })
    expect(only(campaign)?.asRun).toMatchObject({ differs: [], togetherWithRun: false })
    expect(kinds(campaign)).toEqual([])
  })
  it('a given, the rule of the campaign and the instrument move the limit as well', () => {
    const cases: readonly [Files, string][] = [
      [card({ given: '{target: 120 N, hold: 5 s}' }), CARD],
      [scale({ accuracy: '± 20 N' }), 'shared/instruments/lc.md'],
      [
        {
          'shared/campaign.yaml': textOf(BASE, 'shared/campaign.yaml').replace(
            'guarded 95 %',
            'guarded 99.9 %',
          ),
        },
        'shared/campaign.yaml',
      ],
    ]
    const close = run('2026-03-01', 100.6)
    for (const [files, path] of cases) {
      const old = Object.fromEntries(Object.keys(files).map((name) => [name, BASE[name] ?? null]))
      const campaign = campaignOfStory({
        steps: [{ day: '2026-01-15', files }, ...sound(close).slice(1), { day: '2026-03-10', files: old }],
      })
      expect(only(campaign)?.asRun?.differs, path).toEqual([path])
      expect(only(campaign)?.presentVerdict, path).toBe('pass')
      expect(only(campaign)?.verdict, path).not.toBe('pass')
    }
  })
  it('a calibration of a later day moves nothing', () => {
    const more =
      '[{on: 2026-01-10, due: 2027-01-10, by: lab, certificate: C-1}, {on: 2026-03-09, due: 2027-03-09, by: lab, certificate: C-2, uncertainty: 9 N}]'
    const campaign = campaignOfStory({
      steps: [...sound(), { day: '2026-03-10', files: scale({ calibrations: more }) }],
    })
    expect(only(campaign)?.asRun?.differs).toEqual([])
    expect(kinds(campaign)).toEqual([])
  })
  it.each(['c0ffee0', 'not a commit', commitOf(0).slice(0, 4)])(
    'a revision that is no commit of this history (%s) is said, and the time stands for it',
    (revision) => {
      const named = run('2026-03-08', 105, { 'card-revision': revision })
      const campaign = campaignOfStory({ steps: sound(named) })
      const lines = (Object.values(named)[0] ?? '').split('\n')
      const line = lines.findIndex((each) => each.startsWith('card-revision')) + 1
      expect(campaign.problems).toMatchObject([
        { code: 'history/revision', severity: 'warning', at: { line } },
      ])
      expect(only(campaign)?.asRun).toMatchObject({ revision: commitOf(0) })
    },
  )
  it('the revision that the run names goes before its time', () => {
    const named = run('2026-03-01', 105, { 'card-revision': commitOf(0).slice(0, 10) })
    const steps = [
      { day: '2026-01-15', files: limit('peak_ratio >= 1.1') },
      { day: '2026-02-10', files: limit('peak_ratio >= 1') },
      { day: '2026-03-02', files: named },
    ]
    expect(only(campaignOfStory({ steps }))).toMatchObject({
      asRun: { revision: commitOf(0), verdict: 'fail' },
      verdict: 'fail',
    })
  })
  it('readings and limit both changed: what was really done by the card of then counts', () => {
    const landed = run('2026-03-01', 105)
    const now = run('2026-03-01', 103)
    const steps = [
      { day: '2026-01-15', files: limit('peak_ratio <= 1.04') },
      { day: '2026-03-02', files: landed },
      { day: '2026-03-10', files: { ...now, ...limit('peak_ratio <= 1.2') } },
    ]
    const run_ = only(campaignOfStory({ steps }))
    expect(run_).toMatchObject({
      presentVerdict: 'pass',
      asRun: { verdict: 'pass' },
      asLanded: { verdict: 'pass' },
    })
    expect(run_?.verdict).toBe('fail')
  })
  it('a state that cannot be read any more is a note and an item, never a crash', () => {
    const old = textOf(limit('peak_ratio >= 1.1'), CARD).replace('method:', 'procedure:')
    const steps = [
      { day: '2026-01-15', files: { [CARD]: old } },
      ...sound(made).slice(1),
      { day: '2026-03-10', files: limit('peak_ratio >= 1') },
    ]
    const campaign = campaignOfStory({ steps })
    expect(only(campaign)?.notes.join()).toContain('cannot be judged by the files of then')
    expect(itemOf(campaign, 'limit-moved')?.title).toContain('cannot be judged by the state of then')
  })
})

describe('a limit written with the reading', () => {
  const made = run('2026-03-01', 105)
  const reviewedRun = review('2026-03-03', 'cy', { [RUN]: textOf(made, RUN) })
  it('in the landing that brought the run', () => {
    const steps = [
      { day: '2026-01-15', files: limit('peak_ratio >= 1.01') },
      { day: '2026-03-02', files: { ...made, ...limit('peak_ratio >= 1') } },
      reviewedRun,
    ]
    const campaign = campaignOfStory({ steps })
    expect(only(campaign)?.asRun?.togetherWithRun).toBe(true)
    expect(kinds(campaign)).toEqual(['limit-moved', 'limit-with-reading'])
    const done = [...steps, review('2026-03-04', 'cy', { [CARD]: textOf(limit('peak_ratio >= 1'), CARD) })]
    expect(kinds(campaignOfStory({ steps: done }))).toEqual([])
  })
  it('or not landed at all, as the run', () => {
    const steps = [
      { day: '2026-01-15', files: limit('peak_ratio >= 1.01') },
      { day: '2026-03-02', files: { ...made, ...limit('peak_ratio >= 1') }, proposed: true },
    ]
    expect(kinds(campaignOfStory({ steps }))).toEqual(['limit-moved', 'limit-with-reading', 'not-reviewed'])
  })
  it('or only after it', () => {
    const { [CARD]: _, ...rest } = BASE
    const steps = [
      { day: '2026-01-15', files: { ...rest, [CARD]: null } },
      { day: '2026-03-05', files: card() },
      { day: '2026-03-06', files: made },
      review('2026-03-07', 'cy', { [RUN]: textOf(made, RUN) }),
    ]
    const campaign = campaignOfStory({ steps })
    expect(only(campaign)?.asRun).toMatchObject({ writtenAfter: true, revision: commitOf(1) })
    expect(itemOf(campaign, 'limit-with-reading')?.title).toContain('written after the reading')
  })
})

describe('rounds', () => {
  it('what an unreviewed change holds down is not lifted by a second run', () => {
    const files = { ...run('2026-03-01', 105), ...run('2026-03-02', 112) }
    const steps = [
      { day: '2026-01-15', files: limit('peak_ratio >= 1.05') },
      { day: '2026-03-03', files },
      { day: '2026-03-10', files: limit('peak_ratio >= 1') },
    ]
    const campaign = campaignOfStory({ steps })
    expect(campaign.runs.map(({ verdict }) => verdict)).toEqual(['undetermined', 'pass'])
    expect(campaign.cards[0]).toMatchObject({ status: 'undetermined' })
    expect(campaign.cards[0]?.rounds[0]?.asRun).toEqual({ reached: 'undetermined' })
  })
})

describe('gates', () => {
  const gate = (cards: string): Files => ({
    'shared/gates/fly.md': `---\ntitle: Fly\norder: 1\ncards: ${cards}\n---\nInvented.\n`,
  })
  const second = { 'shared/cards/push.md': textOf(card({ title: 'Push' }), CARD) }
  it('a card taken off is an open item until the gate is reviewed', () => {
    const [first, ...rest] = sound()
    const steps = [
      { ...first, day: '2026-01-15', files: { ...second, ...gate('[pull, push]') } },
      ...rest,
      { day: '2026-03-12', files: gate('[pull]') },
    ]
    const campaign = campaignOfStory({ steps })
    expect(itemOf(campaign, 'off-gate')).toMatchObject({
      gates: ['fly'],
      about: ['fly', 'push'],
      since: '2026-03-12',
    })
    expect(campaign.gates[0]?.state).toBe('held')
    const done = [
      ...steps,
      review('2026-03-13', 'cy', { 'shared/gates/fly.md': textOf(gate('[pull]'), 'shared/gates/fly.md') }),
    ]
    expect(kinds(campaignOfStory({ steps: done }))).not.toContain('off-gate')
  })
  it('an article that a card no longer serves, too', () => {
    const both = card({ article: undefined, articles: '{frame: {}, frame/hook: {}}' })
    const [first, ...rest] = sound(run('2026-03-01', 110, { article: 'frame' }))
    const steps = [
      { ...first, day: '2026-01-15', files: both },
      ...rest,
      { day: '2026-03-12', files: card({ article: undefined, articles: '{frame: {}}' }) },
    ]
    expect(itemOf(campaignOfStory({ steps }), 'off-gate')?.title).toContain('no longer serves frame/hook')
  })
  it('fewer runs, no prerequisite and nothing that overtakes are less asked for, too', () => {
    const [first, ...rest] = sound()
    const asking = card({ 'runs-per-round': '2', after: '[push]', 'overtaken-by': '[push]' })
    const steps = [
      { ...first, day: '2026-01-15', files: { ...second, ...asking } },
      ...rest,
      { day: '2026-03-12', files: card() },
    ]
    const told = (all: Story['steps']) =>
      campaignOfStory({ steps: all }).items.flatMap(({ kind, title }) => (kind === 'off-gate' ? [title] : []))
    expect(told(steps)).toEqual([
      'The card Pull on the hook no longer waits for push',
      'The card Pull on the hook is no longer overtaken by push',
      'The card Pull on the hook no longer asks in a round for run 2',
    ])
    expect(told([...steps, review('2026-03-13', 'cy', { [CARD]: textOf(card(), CARD) })])).toEqual([])
  })
  it('a gate that was taken away holds those that are left', () => {
    const water = { 'shared/gates/water.md': '---\ntitle: Water\norder: 2\ncards: [pull]\n---\n' }
    const [first, ...rest] = sound()
    const steps = [
      { ...first, day: '2026-01-15', files: water },
      ...rest,
      { day: '2026-03-12', files: { 'shared/gates/water.md': null } },
    ]
    expect(itemOf(campaignOfStory({ steps }), 'off-gate')).toMatchObject({
      title: 'The gate water was taken away',
      gates: ['fly'],
      since: '2026-03-12',
    })
  })
  it('a begin of history that was set anew holds all of them until it is reviewed', () => {
    const settings = `${textOf(BASE, 'shared/campaign.yaml')}begins: 2026-02-01\n`
    const path = 'shared/campaign.yaml'
    const steps = [
      { day: '2026-01-15' },
      { day: '2026-01-20', files: run('2026-03-01', 90) },
      { day: '2026-02-01', files: { [path]: settings, [RUN]: null } },
      ...sound().slice(1),
    ]
    const campaign = campaignOfStory({ steps, begins: 2 })
    expect(kinds(campaign)).toEqual(['begins'])
    expect(campaign.gates[0]?.heldBy).toEqual([itemOf(campaign, 'begins')?.id])
    const done = [...steps, review('2026-03-13', 'cy', { [path]: settings })]
    expect(kinds(campaignOfStory({ steps: done, begins: 2 }))).toEqual([])
  })
  it('are released by a meeting on what was reviewed by then', () => {
    const go = meeting('2026-03-05')
    const steps = [...sound(), { day: '2026-03-06', files: go }]
    expect(campaignOfStory({ steps }).gates[0]).toMatchObject({ state: 'released', overtaken: false })
    const late = [
      ...sound().slice(0, 2),
      { day: '2026-03-06', files: go },
      review('2026-03-07', 'cy', { [RUN]: textOf(run('2026-03-01'), RUN) }),
    ]
    expect(campaignOfStory({ steps: late }).gates[0]).toMatchObject({ state: 'clear' })
  })
  it('are overtaken by a reading that was changed after the meeting', () => {
    const steps = [
      ...sound(),
      { day: '2026-03-06', files: meeting('2026-03-05') },
      { day: '2026-03-20', files: run('2026-03-01', 111) },
    ]
    expect(campaignOfStory({ steps }).gates[0]).toMatchObject({ state: 'released', overtaken: true })
  })
  it('or by an instrument that was found wrong after it', () => {
    const wrong = scale({
      calibrations:
        '[{on: 2026-01-10, due: 2027-01-10, by: lab, certificate: C-1}, {on: 2026-03-20, due: 2027-03-20, by: lab, certificate: C-2, found-out: reads 3 N too much}]',
    })
    expect(campaignOf(wrong, run('2026-03-01'), meeting('2026-03-05')).gates[0]).toMatchObject({
      state: 'released',
      overtaken: true,
    })
  })
  it('and by a discrepancy that was raised after it', () => {
    const cracked = item('crack', { gates: '[fly]', about: '[pull]' })
    const campaign = campaignOf(run('2026-03-01'), meeting('2026-03-05'), cracked)
    expect(campaign.gates[0]).toMatchObject({ state: 'released', overtaken: true, heldBy: ['crack'] })
    const reworked = campaignOf(run('2026-03-01'), meeting('2026-03-05'), rework('2026-03-07'))
    expect(reworked.gates[0]).toMatchObject({ state: 'released', overtaken: true })
  })
})
