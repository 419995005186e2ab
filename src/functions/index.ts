/** The general functions of card formulas. A method's own functions lie in its folder. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { equivalentAirspeed, trueAirspeed } from './airspeed.ts'
import { airDensity, airPressure, airTemperature } from './atmosphere.ts'
import { anchorLoad, restraintShare, strapAngle } from './belts.ts'
import { dynamicPressure, dynamicPressureAt } from './dynamic-pressure.ts'
import { emergencyLoadFactor, occupantMass, restraintLoad } from './emergency-loads.ts'
import { fluidHead, fluidHeadAxes } from './fluid.ts'
import { gustFactor, gustHingeMoment, gustSpeed } from './ground-gust.ts'
import { pilotForceLimit, pilotForceMinimum, wheelCoupleLimit, wheelCoupleMinimum } from './pilot-forces.ts'
import { elasticEnergy, standoff, standoffLeast, storedEnergy, tntMass } from './pressure-energy.ts'
import { aileronEffectiveness, helixAngle, reversalSpeed, rollRateOfHelix } from './roll.ts'
import { surfaceFrequency } from './surface-frequency.ts'

export const FUNCTIONS: Readonly<Record<string, FormulaFunction>> = Object.fromEntries(
  [
    airDensity,
    airPressure,
    airTemperature,
    dynamicPressure,
    dynamicPressureAt,
    equivalentAirspeed,
    trueAirspeed,
    gustSpeed,
    gustFactor,
    gustHingeMoment,
    pilotForceLimit,
    pilotForceMinimum,
    wheelCoupleLimit,
    wheelCoupleMinimum,
    surfaceFrequency,
    helixAngle,
    rollRateOfHelix,
    reversalSpeed,
    aileronEffectiveness,
    emergencyLoadFactor,
    occupantMass,
    restraintLoad,
    restraintShare,
    strapAngle,
    anchorLoad,
    fluidHead,
    fluidHeadAxes,
    storedEnergy,
    elasticEnergy,
    tntMass,
    standoff,
    standoffLeast,
  ].map((entry) => [entry.name, entry]),
)
