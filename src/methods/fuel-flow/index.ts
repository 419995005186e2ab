/** Fuel flow: what reaches the engine in the worst attitude at the least fuel, and what stays in the tank. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { conditions } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { plan } from './plan.ts'
import { rehearse } from './rehearse.ts'
import { schema } from './schema.ts'
import { select } from './select.ts'
import { sources } from './sources.ts'
import { validate } from './validate.ts'

export const method: Method = {
  id: 'fuel-flow',
  title: 'Fuel flow',
  question: 'Does the engine get enough fuel?',
  cautions: [
    'Fuel runs in the open: outdoors, no flame, no switch that sparks, extinguisher at hand, aircraft, can and funnel earthed together.',
    'Ignition off and plug leads off: the propeller stands within reach.',
    'Block the aircraft in the nose-up attitude so that it cannot fall; nobody works under the tail.',
    'Measure at the carburettor or injector inlet, behind everything that the fuel passes, with filters and cocks as in flight.',
    'A tank that runs dry before the time is up makes no flow test: say so, and measure what was left.',
    'Put the line back, check it for leaks under pressure, and record it as a rework.',
  ],
  schema,
  validate,
  select,
  estimate,
  sources,
  conditions,
  rehearse,
  figures,
  plan,
  advise,
}

export default method
