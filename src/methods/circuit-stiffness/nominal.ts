/** A circuit that gives a tenth of its travel under the limit load: plausible enough to plan a test with. */
import type { Givens } from '../method.ts'
import { isKind } from './motion.ts'

/** Where the travel is not given: an angle, or a length, that such circuits give. */
const GIVEN = { angle: 0.05, length: 0.02 }

export const nominal = ({ numbers, dims }: Givens): Readonly<Record<string, number>> => {
  const limit = Math.abs(numbers.limit_load ?? 1)
  const isMoment = dims?.limit_load !== undefined && isKind(dims.limit_load, 'moment')
  const { arm, full_travel: travel } = numbers
  if (arm === undefined && !isMoment) {
    return {
      linear_stiffness: limit / (travel === undefined ? GIVEN.length : travel / 10),
      friction: limit / 50,
    }
  }
  const moment = isMoment ? limit : limit * (arm ?? 1)
  return { stiffness: moment / (travel === undefined ? GIVEN.angle : travel / 10), friction: moment / 50 }
}
