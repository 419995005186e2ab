/** Writes readings in the dialect of a logger: the other half of what is tested. All of it is invented. */
import type { Decimal, Delimiter, Encoding } from '../../../src/format/logger/types.ts'

export type Row = { readonly seconds: number; readonly load: string | null; readonly temperature: string }

export type Way = {
  readonly encoding: Encoding
  readonly mark: boolean
  readonly delimiter: Delimiter
  readonly decimal: Decimal
  readonly end: '\n' | '\r\n' | '\r'
  readonly preamble: readonly string[]
  readonly units: boolean
  readonly quoted: boolean
  readonly trailing: boolean
  readonly closed: boolean
  readonly format: string
  readonly missing: string
}

const two = (value: number) => String(Math.floor(value)).padStart(2, '0')

/** Seconds since 2026-03-04 00:00 in a format; days go on through March. */
export function timeText(seconds: number, format: string): string {
  const day = Math.floor(seconds / 86_400)
  const within = seconds - 86_400 * day
  const [hour, minute, second] = [Math.floor(within / 3600), Math.floor(within / 60) % 60, within % 60]
  const parts: Readonly<Record<string, string>> = {
    YYYY: '2026',
    MM: '03',
    M: '3',
    DD: two(4 + day),
    D: String(4 + day),
    HH: two(hour),
    h: String(hour % 12 || 12),
    mm: two(minute),
    ss: two(second),
    A: hour < 12 ? 'AM' : 'PM',
  }
  const written = format === 'ISO' ? 'YYYY-MM-DDTHH:mm:ss' : format
  return written.replace(/YYYY|MM|M|DD|D|HH|h|mm|ss|A/g, (part) => parts[part] ?? part)
}

export function writeLog(rows: readonly Row[], way: Way): string {
  const { delimiter, decimal, quoted, trailing } = way
  const cell = (text: string) => {
    const must = text.includes(delimiter) || text.includes('"')
    return quoted || must ? `"${text.replaceAll('"', '""')}"` : text
  }
  const line = (cells: readonly string[]) => cells.map(cell).join(delimiter) + (trailing ? delimiter : '')
  const number = (text: string) => text.replace('.', decimal)
  const lines = [
    ...way.preamble,
    line(['Zeit', 'Kraft [N]', 'Temp.', 'Status']),
    ...(way.units ? [line(['', 'N', '°C', ''])] : []),
    ...rows.map(({ seconds, load, temperature }) =>
      line([
        timeText(seconds, way.format),
        load === null ? way.missing : number(load),
        number(temperature),
        'ok',
      ]),
    ),
  ]
  return lines.join(way.end) + (way.closed ? way.end : '')
}

/** The upper half of Windows-1252 that is needed here is that of Latin-1. */
export function encode(text: string, encoding: Encoding, mark: boolean): Uint8Array {
  const marked = mark && encoding !== 'Windows-1252' ? `\uFEFF${text}` : text
  if (encoding === 'UTF-8') return new TextEncoder().encode(marked)
  if (encoding === 'Windows-1252') return Uint8Array.from(marked, (sign) => sign.charCodeAt(0))
  const bytes = new Uint8Array(2 * marked.length)
  const view = new DataView(bytes.buffer)
  for (let at = 0; at < marked.length; at++)
    view.setUint16(2 * at, marked.charCodeAt(at), encoding === 'UTF-16 LE')
  return bytes
}
