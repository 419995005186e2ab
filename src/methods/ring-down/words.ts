/** Numbers in sentences: three digits. */
const short = (value: number): string => `${Number(value.toPrecision(3))}`.replace('-', '−')

export const percent = (share: number): string => `${short(share * 100)} %`

export const plain = short
