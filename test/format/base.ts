/** A small campaign that is valid, as files in memory; all in it is invented. Tests change one file at a time. */
import type { MethodSchemas } from '../../src/format/records.ts'
import type { Schema } from '../../src/methods/method.ts'

const none = { ramp: 'none', hold: false, instrument: 'none' } as const
const read = { ramp: 'own', hold: false, instrument: 'required' } as const

/** A method that only the tests know: a spring under load. */
const springSchema: Schema = {
  givens: [
    {
      name: 'arm',
      meaning: 'load line to pivot',
      kind: 'length',
      role: 'known',
      required: true,
      range: { low: 0 },
    },
    {
      name: 'limit_load',
      meaning: 'load that must be reached',
      kind: 'moment',
      or: ['force'],
      role: 'setpoint',
      required: true,
    },
    {
      name: 'loaded_end',
      meaning: 'where the load acts',
      kind: 'text',
      role: 'choice',
      choices: ['surface', 'cockpit'],
      required: true,
    },
    {
      name: 'drift_error',
      meaning: 'error of temperature over the hold',
      kind: 'temperature-difference',
      role: 'setpoint',
      required: false,
    },
    {
      name: 'stiffness',
      meaning: 'stiffness from another run',
      kind: 'linear-stiffness',
      role: 'known',
      required: false,
    },
    { name: 'because', meaning: 'why so', kind: 'text', role: 'words', required: false },
  ],
  columns: [
    { name: 'time', meaning: 'time of the reading', kind: 'time', required: false, ...none },
    { name: 'load', meaning: 'load on the spring', kind: 'force', or: ['moment'], required: true, ...read },
    { name: 'deflection', meaning: 'movement under the load', kind: 'length', required: true, ...read },
    {
      name: 'branch',
      meaning: 'rising or falling',
      kind: 'text',
      choices: ['up', 'down'],
      required: false,
      ...none,
    },
    { name: 'at_<station>', meaning: 'movement of a station', kind: 'length', required: false, ...none },
    { name: 'temperature', meaning: 'of the air', kind: 'temperature', required: false, ...none },
  ],
  measures: [{ name: 'stiffness', meaning: 'load per movement', kind: 'linear-stiffness' }],
  cardFields: [
    {
      name: 'stations',
      meaning: 'places along the spring',
      required: false,
      read: (raw) =>
        Array.isArray(raw)
          ? { ok: true, value: raw }
          : {
              ok: false,
              error: [{ code: 'field/shape', message: '`stations` is a list', start: 0, end: 1, path: [] }],
            },
    },
  ],
}

const countSchema: Schema = {
  givens: [],
  columns: [
    { name: 'load', meaning: 'load', kind: 'force', required: false, ...none },
    { name: 'weight', meaning: 'weight', kind: 'mass', required: false, ...none },
  ],
  measures: [],
  cardFields: [],
  alternatives: [{ sets: [['load'], ['weight']], say: 'the method count needs `load` or `weight`' }],
}

export const SCHEMAS: MethodSchemas = { spring: { schema: springSchema }, count: { schema: countSchema } }

export const RUN = 'records/runs/2026-03/2026-03-04-0912-spring-pull.md'

export const BASE: Readonly<Record<string, string>> = {
  'shared/campaign.yaml': `title: Invented campaign
purpose: To test the reading of files
main: main
timezone: Europe/Zurich
rule: guarded 95 %
review: [forge, trailer]
files: {size: 8 MB, kinds: [jpg, png]}
`,
  'shared/people.yaml': `moduya:
  name: M. Oduya
  emails: [m.oduya@example.org]
  roles: [record]
rlind:
  name: R. Lind
  roles: [witness, review, concede]
`,
  'shared/articles/wing-left.md': `---
title: Left wing
serial: "0012"
parts: [spring, horn, spring/end]
---
`,
  'shared/articles/wing-right.md': `---
title: Right wing
parts: [spring, horn]
---
`,
  'shared/cards/spring-pull.md': `---
title: Spring, pull test
method: spring
owner: moduya
articles:
  wing-left: {arm: 120.0 ± 0.5 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}
covers: [spring]
runs-per-round: 1
stop-at: {load: 120 N}
instruments:
  load: {range: 0 N .. 200 N, uncertainty: <= 1 N, resolution: <= 0.5 N, drift: <= 1 N/h}
  deflection: {range: 0 mm .. 30 mm, resolution: <= 0.05 mm}
given:
  limit_load: 100 N
  loaded_end: surface
ask: [drift_error]
every: 1 min
criteria:
  stiff:
    accept: stiffness > 4 N/mm
    rule: guarded 95 %
    show: N/mm
    why: invented
derive:
  soft: 1 / stiffness
---
## Purpose
Invented.
`,
  'shared/cards/spring-proof.md': `---
title: Spring, proof
method: spring
owner: rlind
article: wing-left
overtaken-by: []
given: {limit_load: 150 N, loaded_end: cockpit, arm: 120.0 ± 0.5 mm}
after: [spring-pull]
---
`,
  'shared/instruments/fg-01.md': `---
title: Force gauge
kind: force gauge
serial: "4711"
range: 0 N .. 500 N
resolution: 0.1 N
accuracy: ± (0.2 % reading + 0.1 % span)
drift: ± 0.5 N/h
calibrations:
  - on: 2025-11-03
    due: 2026-11-03
    by: Invented laboratory
    certificate: C-17
    uncertainty: ± 0.2 N
    corrections: |
      reading  add
      N        N
      0        0
      250      0.3
---
`,
  'shared/instruments/dg-02.md': `---
title: Dial gauge
kind: dial gauge
serial: "12"
range: 0 mm .. 30 mm
resolution: 0.01 mm
accuracy: ± 0.02 mm
---
`,
  'shared/gates/taxi.md': `---
title: Taxi
order: 2
cards:
  - spring-pull
  - spring-proof
needs: []
---
`,
  [RUN]: `---
card: spring-pull
article: wing-left
when: 2026-03-04T09:12+01:00
by: [moduya]
witness: [rlind]
instruments: {load: fg-01, deflection: dg-02}
given: {drift_error: 0.3 K (u)}
rig: {id: rig-03, relief: "water column, opens at 5 kPa"}
ambient: {temperature: 12 °C, note: "door shut"}
fitted: [{id: pin, what: rigging pin}]
readings: |
  time   load  deflection  branch  remark
  hh:mm  N     mm          text    text
  09:12  0     0.00        up
  09:13  50.5  11.02       up      a creak at 40 N
  09:14  100   21.95       down
---
## Observed
- Nothing.
`,
  'records/rework/2026-03-05-horn.md': `---
title: Horn replaced
when: 2026-03-05T10:00+01:00
by: [moduya]
inspected-by: rlind
changes: [wing-left/horn]
because: [2026-03-04-0912-spring-pull]
serials:
  wing-left/horn: {out: "1", in: "2"}
removed: ["2026-03-04-0912-spring-pull#pin"]
---
`,
  'records/items/horn-play.md': `---
title: Play in the horn
kind: discrepancy
raised: {when: 2026-03-04T12:00+01:00, by: rlind}
about: [2026-03-04-0912-spring-pull, wing-left/horn]
gates: [taxi]
owner: moduya
due: 2026-04-01
---
`,
  'records/readiness/2026-03-06-taxi.md': `---
gate: taxi
when: 2026-03-06T16:00+01:00
present: [moduya, rlind]
decision: no-go
conditions: [horn-play]
basis:
  - {run: 2026-03-04-0912-spring-pull, criterion: stiff, verdict: pass, value: 4.56 N/mm, U: 0.05 N/mm}
---
`,
}

/** The base with some files replaced, added, or (null) left out. */
export function campaign(
  changes: Readonly<Record<string, string | null>> = {},
): { path: string; text: string }[] {
  return Object.entries({ ...BASE, ...changes }).flatMap(([path, text]) =>
    text === null ? [] : [{ path, text }],
  )
}

/** A base file with one piece of text replaced; the piece must be there once. */
export function changed(path: string, from: string, to: string): Record<string, string> {
  const text = BASE[path] ?? ''
  if (text.split(from).length !== 2) throw new Error(`\`${from}\` does not stand once in ${path}`)
  return { [path]: text.replace(from, () => to) }
}
