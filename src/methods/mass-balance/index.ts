/** Static balance of a control surface about its hinge. */
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
  id: 'mass-balance',
  title: 'Mass balance',
  question: 'How far is a control surface out of balance about its hinge?',
  cautions: [
    'Balance it as it flies: painted, with horn, tab, static wicks and all fasteners.',
    'Take the linkage off, or hang it up: a push-rod left on carries or loads the surface.',
    'Hinge on knife edges or free bearings; tap the stand before each reading, for friction hides unbalance.',
    'A balance weight that comes loose is worse than none: check its fastening, and record a change of it as a rework.',
    'The limit is the designer’s; the applicable local code and the responsible licensed person decide.',
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
