/** Weight and centre of gravity from scales under the points of support. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { conditions } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { plan } from './plan.ts'
import { rehearse } from './rehearse.ts'
import { describe, schema } from './schema.ts'
import { select } from './select.ts'
import { sources } from './sources.ts'
import { validate } from './validate.ts'

export const method: Method = {
  id: 'weighing',
  title: 'Weighing',
  question: 'What does it weigh, and where is its centre of gravity?',
  cautions: [
    'Chock or hold what can roll off a scale or ramp, and let nobody under a jacked wing; brakes off once it stands on the scales.',
    'Weigh indoors, without wind: a breeze over the wing lifts part of the weight.',
    'List what is on board (fuel, oil, ballast, seats, tools) and take off or add what the empty weight asks for.',
    'Subtract chocks, ramps and stands once, not twice.',
    'Measure the arms and the level on the day, as it stands on the scales.',
    'Repeat and swap: roll off, zero, roll on again, and change the scales between the points.',
  ],
  schema,
  describe,
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
