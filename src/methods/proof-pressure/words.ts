/** Numbers in sentences. */
const short = (value: number): string => `${Number(value.toPrecision(3))}`.replace('-', '−')

export const pascals = (pressure: number): string =>
  Math.abs(pressure) >= 10_000 ? `${short(pressure / 1000)} kPa` : `${short(pressure)} Pa`
export const percent = (share: number): string => `${Number((100 * share).toPrecision(5))} %`
export const joules = (energy: number): string =>
  energy >= 10_000 ? `${short(energy / 1000)} kJ` : `${short(energy)} J`
export const metres = (distance: number): string => `${short(distance)} m`
export const seconds = (time: number): string => `${short(time)} s`
