/** A pressurised structure: a pressure reached and held, the bulge of the skin, and what stays. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { conditions } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { plan } from './plan.ts'
import { prepare } from './readings.ts'
import { rehearse } from './rehearse.ts'
import { describe, schema } from './schema.ts'
import { select } from './select.ts'
import { sources } from './sources.ts'
import { validate } from './validate.ts'

export const method: Method = {
  id: 'proof-pressure',
  title: 'Proof pressure',
  question: 'Does a pressurised structure carry its load, and does it come back?',
  cautions: [
    'A relief that cannot be closed, set below the never-exceed pressure and tried before: a bleed, or a water column that blows out.',
    'Stand clear behind the stand-off distance, out of line with covers, plugs and hoses. Nobody approaches while the pressure rises, and nobody touches a fitting under pressure.',
    'Raise in steps and wait at each; stop at any crack, bang or jump of a dial, and let the pressure off from a distance.',
    'Prefer liquid where the structure bears its weight: the same pressure stores about a hundred thousand times less.',
    'Fuel and vapour out first. Read gauges from afar or by camera.',
    'A leak check before says nothing about after: repeat it.',
    'The applicable local code and the responsible licensed person decide on the pressure and on what set is allowed.',
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
