/** The volume of the gas and how the walls give, from whichever two of volume, compliance and syringe step are known. */
import type { Givens } from '../method.ts'

/** `zero`: m³ at zero gauge pressure; `compliance`: m³/Pa. */
export type Volume = { readonly zero: number; readonly compliance: number }

/**
 * A syringe step v that raises the pressure by Δp at constant temperature shows V + P dV/dp = P v/|Δp|, from
 * d(P V) = 0 for gas and syringe together; V is the volume at the pressure of the test.
 * `gauge` and `absolute` are the pressures at which the step was made, Pa. NaN where too little is given.
 */
export const volumeOf = (givens: Givens, gauge: number, absolute: number): Volume => {
  const { volume, volume_compliance, syringe_volume, syringe_step } = givens.numbers
  const compliance = volume_compliance ?? (givens.words.rigid === undefined ? undefined : 0)
  if (volume !== undefined && compliance !== undefined) return { zero: volume, compliance }
  if (syringe_volume === undefined || syringe_step === undefined) {
    return { zero: volume ?? Number.NaN, compliance: compliance ?? Number.NaN }
  }
  const stiff = (absolute * syringe_volume) / Math.abs(syringe_step)
  if (compliance !== undefined) return { zero: stiff - (gauge + absolute) * compliance, compliance }
  if (volume !== undefined) return { zero: volume, compliance: (stiff - volume) / (gauge + absolute) }
  return { zero: Number.NaN, compliance: Number.NaN }
}
