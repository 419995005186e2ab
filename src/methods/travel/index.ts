/** Travel of control surfaces: each position against its drawn angle and tolerance. */
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
  id: 'travel',
  title: 'Travel of surfaces',
  question: 'Do surfaces move as far as drawn, and no further?',
  cautions: [
    'Watch fingers and heads: whoever moves the stick says so first, and nobody else touches a surface.',
    'Check the direction by two people, one at the stick and one at the surface: it does not follow from the numbers.',
    'Block the aircraft so that it cannot rock, and set the level to zero on the surface in its own neutral.',
    'Flaps, trim and the other axis as the card says: they change the travel.',
    'Once more with a hand holding each surface: free travel does not show a weak link or a stop that gives.',
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
