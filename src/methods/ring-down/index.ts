/** At what frequency does it ring, and how fast does it die down? */
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
  id: 'ring-down',
  title: 'Ring-down',
  question: 'At what frequency does it ring, and how much damping does it have?',
  cautions: [
    'Friction makes the damping look large at small amplitude. For flutter that is the unsafe direction: look at damping against amplitude.',
    'One record is one mode at one place. It is no flutter clearance: the responsible licensed person decides what follows.',
    'Strike with a soft hammer or release from a pulled position where the structure is sound; never against a stop.',
    'Fingers clear of hinges and gaps; nobody leans on the article while it rings.',
    'The mass of the sensor lowers the frequency of a light part: keep it small, and say it in the record.',
    'The stand rings too: support as in the drawing (on its wheels, soft-tied, clamped) and say how.',
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
