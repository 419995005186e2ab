/** Stiffness, play and friction of a control circuit under load, in both directions, in cycles. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { conditions } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { functions } from './functions.ts'
import { misuse } from './misuse.ts'
import { nominal } from './nominal.ts'
import { plan } from './plan.ts'
import { rehearse } from './rehearse.ts'
import { describe, schema } from './schema.ts'
import { select } from './select.ts'
import { validate } from './validate.ts'

const method: Method = {
  id: 'circuit-stiffness',
  title: 'Control circuit stiffness',
  question: 'How much of the commanded deflection does the circuit lose under load, and to which part of it?',
  cautions: [
    'Hands and heads stay clear of the surface and of the cables while the load is on.',
    'Load in steps, never beyond the stop value of the card; go back to zero before anything is touched.',
    'Lock the other end at a part that carries the load in flight, and read its motion.',
    'The local code and the responsible licensed person decide on the load and on what is stiff enough.',
  ],
  schema,
  describe,
  functions,
  misuse,
  validate,
  select,
  estimate,
  conditions,
  nominal,
  rehearse,
  figures,
  advise,
  plan,
}

export default method
