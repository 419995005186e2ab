/** Numbers in sentences: three digits, the units of the hangar. */
const short = (value: number): string => `${Number(value.toPrecision(3))}`.replace('-', '−')

export const litres = (flow: number): string => `${short(flow * 60_000)} L/min`
export const pascals = (pressure: number): string => `${short(pressure)} Pa`
export const percent = (share: number): string => `${Number((100 * share).toPrecision(5))} %`
export const wayWords = (way: string): string => (way === 'in' ? 'inwards' : way === 'out' ? 'outwards' : '')
