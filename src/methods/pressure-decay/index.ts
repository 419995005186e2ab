/** Is a closed volume tight? Vacuum or pressure is held and its change judged as a leak. */
import type { Method } from '../method.ts'
import { advise } from './advise.ts'
import { complete } from './complete.ts'
import { conditions } from './conditions.ts'
import { estimate } from './estimate.ts'
import { figures } from './figures.ts'
import { plan } from './plan.ts'
import { rehearse } from './rehearse.ts'
import { schema } from './schema.ts'
import { select } from './select.ts'
import { sources } from './sources.ts'
import { validate } from './validate.ts'

export { type HoldPlan, planHold } from './hold-time.ts'

export const method: Method = {
  id: 'pressure-decay',
  title: 'Pressure decay',
  question: 'Is a closed volume tight: how much leaks out of it, or into it, at the test pressure?',
  cautions: [
    'Keep within stop-at, and have a relief: a bleed, or a water column that blows out. Shop air on a regulator without one can burst a tank.',
    'Fuel and fuel vapour out first, the volume dry and aired: vapour can burn, and what evaporates hides a leak.',
    'Near one atmosphere and room temperature, 1 K of the gas is about 340 to 350 Pa. Door shut, no sun, no hands on the skin.',
    'Pumping warms the gas, drawing off cools it: wait until it has settled before readings count.',
    'Filler cap, test valve, hose and plugs leak more often than seams: check the rig closed off by itself.',
    'Plugs and tape come out again: list them under `fitted`.',
    'Suction pulls a path shut that pressure opens, and the other way round: a pass under the one is none under the other.',
    'A tight tank is not a sound tank, and tight before the proof pressure says nothing about after.',
    'A balloon finds a leak and proves none: a pass needs a gauge.',
    'On a U-tube the pressure is the difference of both levels, not the fall of one.',
  ],
  schema,
  validate,
  select,
  estimate,
  sources,
  complete,
  conditions,
  rehearse,
  figures,
  advise,
  plan,
}
export default method
