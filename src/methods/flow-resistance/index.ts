/** Vents and lines: what pressure it takes to pass what they must. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { conditions } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { plan } from './plan.ts'
import { rehearse } from './rehearse.ts'
import { schema } from './schema.ts'
import { select } from './select.ts'
import { validate } from './validate.ts'

export const method: Method = {
  id: 'flow-resistance',
  title: 'Flow resistance',
  question: 'Do vents and lines pass what they must?',
  cautions: [
    'Never put pressure or suction on a tank through the vent under test without a relief: the tank may burst or cave in at a few kilopascals.',
    'Fuel and vapour out first; air blown through a wet line makes a mist that can burn.',
    'Test both ways wherever a flap, a check valve or a screen is in the path.',
    'Read the drop at the tank, not at the pump: the hose drops too.',
    'Take plugs, tape and covers of a leak check out first, and list what you fit for this test under `fitted`.',
  ],
  schema,
  validate,
  select,
  estimate,
  conditions,
  rehearse,
  figures,
  plan,
  advise,
}

export default method
