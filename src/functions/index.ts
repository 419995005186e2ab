/** The general functions of card formulas. A method's own functions lie in its folder. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { airDensity, airPressure, airTemperature } from './atmosphere.ts'
import { dynamicPressure, dynamicPressureAt } from './dynamic-pressure.ts'
import { fluidHead, storedEnergy } from './fluid.ts'
import { gustFactor, gustHingeMoment, gustSpeed } from './ground-gust.ts'
import { pilotForceLimit, pilotForceMinimum, wheelCoupleLimit, wheelCoupleMinimum } from './pilot-forces.ts'

export const FUNCTIONS: Readonly<Record<string, FormulaFunction>> = Object.fromEntries(
  [
    airDensity,
    airPressure,
    airTemperature,
    dynamicPressure,
    dynamicPressureAt,
    gustSpeed,
    gustFactor,
    gustHingeMoment,
    pilotForceLimit,
    pilotForceMinimum,
    wheelCoupleLimit,
    wheelCoupleMinimum,
    fluidHead,
    storedEnergy,
  ].map((entry) => [entry.name, entry]),
)
