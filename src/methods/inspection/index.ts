/** Is it installed and does it work: restraints, locks, placards, lock-wire, torque, egress. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { prepare } from './answers.ts'
import { conditions, openItems } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { plan } from './plan.ts'
import { rehearse } from './rehearse.ts'
import { describe, schema } from './schema.ts'
import { validate } from './validate.ts'

export const method: Method = {
  id: 'inspection',
  title: 'Inspection',
  question: 'Is it installed as drawn, and does it work?',
  cautions: [
    'Undo nothing to look at it: what was undone is a rework and must be recorded as one.',
    'Whoever fitted it does not inspect it alone.',
    'An entry that was not looked at stays open; it is not ok because nothing was seen.',
  ],
  schema,
  describe,
  validate,
  prepare,
  select: () => ({}),
  estimate,
  conditions,
  openItems,
  rehearse,
  figures,
  plan,
  advise,
}

export default method
