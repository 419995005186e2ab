/** Names of sources of uncertainty, as people read them in a budget. */

const INSTRUMENT: Readonly<Record<string, string>> = {
  gain: 'scale error',
  offset: 'zero error',
  linearity: 'non-linearity',
  'linearity-level': 'non-linearity at one reading',
  hysteresis: 'hysteresis',
  drift: 'drift',
  calibration: 'calibration',
}

const plain = (name: string): string => name.replaceAll('_', ' ')

/** `instrument:pg-07@2026-01-10/gain` → `pg-07, scale error`; unknown forms come back as they are. */
export const sourceWords = (source: string): string => {
  const [, kind = '', rest = ''] = /^([a-z]+):(.*)$/.exec(source) ?? []
  const parts = rest.split('/')
  const last = parts[parts.length - 1] ?? ''
  if (kind === 'instrument') {
    const [id = ''] = (parts[0] ?? '').split('@')
    return `${id}, ${INSTRUMENT[last] ?? plain(last)}`
  }
  if (kind === 'resolution') return `resolution of ${plain(parts[1] ?? '')}`
  if (kind === 'zero') return `zero shift of ${plain(last)}`
  if (kind === 'fit' && parts[1] === 'resolution') return `resolution of ${plain(parts[2] ?? '')}`
  if (kind === 'fit') return 'scatter of the readings'
  if (kind === 'method') return plain(last)
  if (kind === 'given' && parts[0]?.startsWith('card:')) return `${plain(last)}, as the card gives it`
  if (kind === 'given' && parts[0]?.startsWith('run:')) return `${plain(last)}, as measured on the day`
  if (kind === 'given') return plain(parts[0] ?? '')
  return source
}
