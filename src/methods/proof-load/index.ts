/** A calculated load, held, and what it leaves behind: ground gust, pilot forces, seats, hoist points. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { conditions } from './conditions.ts'
import { describe } from './describe.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { plan } from './plan.ts'
import { prepare } from './readings.ts'
import { rehearse } from './rehearse.ts'
import { schema } from './schema.ts'
import { select } from './select.ts'
import { sources } from './sources.ts'
import { validate } from './validate.ts'

export const method: Method = {
  id: 'proof-load',
  title: 'Proof load',
  question: 'Does it hold a calculated load, and does it come back?',
  cautions: [
    'Nobody stands under the load, in the line of pull or where a part could fly that lets go.',
    'Raise in steps, never by a jerk and never beyond the stop value of the card; stop at any crack or bang and look.',
    'The weight of fixture, bags and of the part itself loads too: put it into the target or the readings.',
    'Say which load it is (limit or ultimate, with the factor) and take the target from the load sheet.',
    'The applicable local code and the responsible licensed person decide on the load and on what set is allowed.',
  ],
  schema,
  describe,
  validate,
  prepare,
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
