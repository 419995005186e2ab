/** Are the static and the pitot line tight? */
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
  id: 'static-leak',
  title: 'Static and pitot leak',
  question:
    'Is the static line tight, and the pitot line: how much does the indicator fall back in a minute?',
  cautions: [
    'Draw and blow slowly, and let out as slowly: the pointer must never run to its stop, nor the rate of climb beyond its scale.',
    'Never leave the pitot line below the static line, and never suck on the pitot line: the airspeed indicator is over-run.',
    'Know which instruments hang on the line, and what each may bear; an altimeter capsule is torn by a mouth.',
    'Close drains and the second port with what cannot be overlooked, list it under `fitted`, and take it out again.',
    'Check the rig closed off by itself first: the syringe, its hose and its valve leak more often than the line.',
    '1 K of the gas in the line is as much as 96 ft: no sun, no hands on the tubes, wait after pumping.',
    'Every joint that is opened afterwards needs a new check.',
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
