/** Numbers in sentences: three digits, the units of the hangar. */
const short = (value: number): string => `${Number(value.toPrecision(3))}`.replace('-', '−')

export const percent = (share: number): string => `${short(share * 100)} %`

export const pascals = (value: number): string => `${short(value)} Pa`

export const seconds = (value: number): string => `${short(value)} s`

export const feet = (metres: number): string => `${short(metres / 0.3048)} ft`

export const knots = (speed: number): string => `${short((speed * 3600) / 1852)} kt`
