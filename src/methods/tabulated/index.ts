/** Anything that can be written as a table and a few formulas: engine run-up, brakes, electrical loads, taxi. */
import type { Method } from '../method.ts'
import { plan } from './before.ts'
import { checkFields } from './check-fields.ts'
import { conditions } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { rehearse } from './rehearse.ts'
import { describe, schema } from './schema.ts'
import { select } from './select.ts'

export const method: Method = {
  id: 'tabulated',
  title: 'Tabulated test',
  question: 'What do the formulas of the card make of the readings?',
  cautions: [
    'The card is the method here: whoever wrote its formulas answers for them, and a second person works one example by hand.',
    'Where a method of its own exists for a test, use that: it knows what bars a pass, and this one does not.',
    'Running engines, brakes and live circuits need their own safety brief: write it into `cautions` of the card.',
  ],
  schema,
  describe,
  checkFields,
  select,
  estimate,
  conditions,
  rehearse,
  figures,
  plan,
}

export default method
