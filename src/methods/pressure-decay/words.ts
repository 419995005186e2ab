/** Numbers in sentences: three or four digits, the units of the hangar. */

const short = (value: number): string => {
  const rounded = Number(value.toPrecision(4))
  return (Math.abs(rounded) < 1e-3 && rounded !== 0 ? rounded.toExponential(1) : `${rounded}`).replace(
    '-',
    '−',
  )
}

export const pascals = (value: number): string => `${short(value)} Pa`

export const minutes = (seconds: number): string => `${short(seconds / 60)} min`

export const percent = (share: number): string => `${short(share * 100)} %`

/** A leak in m³/s as people say it. */
export const perMinute = (flow: number): string => `${short(flow * 6e7)} cm³/min`
