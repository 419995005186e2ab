/** Times as loggers write them, read by a format that the run states: `DD.MM.YYYY HH:mm:ss`, `h:mm:ss A`, `ISO`. */
import { refuse } from '../../quantity/faults.ts'
import type { Result } from '../../quantity/types.ts'

/** What a time cell says. One object serves a whole file. */
export type TimeSeen = {
  /** Days since 1970-01-01; 0 where the format has no date. */
  day: number
  /** Since midnight, with their fraction. */
  seconds: number
  /** Offset from UTC, s; 0 where the cell says none. */
  zone: number
  /** Figures behind the seconds. */
  places: number
}

type Part = 'YYYY' | 'YY' | 'MMM' | 'MM' | 'DD' | 'HH' | 'hh' | 'mm' | 'ss' | 'A' | 'Z'
/** All of one shape: a million times are read by them. */
type Step = {
  /** Reads a part; null where a sign stands. */
  readonly read: ((reading: Reading) => void) | null
  readonly literal: number
}

export type TimeFormat = {
  readonly steps: readonly Step[]
  /** How many a second, where the time is a number since 1970; 0 where it is written in parts. */
  readonly epoch: number
  readonly hasDate: boolean
  readonly hasSeconds: boolean
}

const TOKEN = /YYYY|YY|MMM|MM?|DD?|HH?|hh?|mm?|ss?|A|Z|[.,]?S+|\s+|T|[^A-Za-z]|[A-Za-z]+/g
const PARTS: Readonly<Record<string, Part>> = {
  YYYY: 'YYYY',
  YY: 'YY',
  MMM: 'MMM',
  MM: 'MM',
  M: 'MM',
  DD: 'DD',
  D: 'DD',
  HH: 'HH',
  H: 'HH',
  hh: 'hh',
  h: 'hh',
  mm: 'mm',
  m: 'mm',
  ss: 'ss',
  s: 'ss',
  A: 'A',
  Z: 'Z',
}
const NAMED: Readonly<Record<string, TimeFormat>> = {
  'epoch s': { steps: [], epoch: 1, hasDate: true, hasSeconds: true },
  'epoch ms': { steps: [], epoch: 1000, hasDate: true, hasSeconds: true },
}
/** RFC 3339, 5.6; the offset may be left out. */
const ISO = 'YYYY-MM-DDTHH:mm:ssZ'
const KNOWN = 'YYYY MM DD HH mm ss, h with A, MMM, Z; or `ISO`, `epoch s`, `epoch ms`'
const BLANK = 32
const DAY = 86_400
const PLUS = 43
const MINUS = 45
const POINT = 46
const CAPITAL_Z = 90
const COMMA = 44
/** Nanoseconds, and some more. */
const MOST_PLACES = 12

/** Reads a format once a column. Seconds may always have a fraction behind them, so `.SSS` need not be said. */
export function timeFormat(written: string): Result<TimeFormat> {
  const named = NAMED[written]
  if (named) return { ok: true, value: named }
  const fault = (message: string, hint: string, start = 0, end = written.length) =>
    refuse('readings/time-format', message, start, end, { hint })
  const steps: Step[] = []
  const parts = new Set<Part>()
  for (const { 0: token, index } of (written === 'ISO' ? ISO : written).matchAll(TOKEN)) {
    const part = PARTS[token]
    if (part) {
      steps.push({ read: READ[part], literal: 0 })
      parts.add(part)
    } else if (/^[.,]?S+$/.test(token)) continue
    else if (/^[A-Za-z]{2}|^[A-SU-Za-z]$/.test(token)) {
      const near = { yyyy: 'YYYY', yy: 'YY', dd: 'DD', d: 'DD', tt: 'A', a: 'A', SS: 'ss', am: 'A' }
      const meant = Object.entries(near).find(([name]) => name === token)?.[1]
      const hint = meant ? `\`${meant}\` is meant, perhaps` : `known are ${KNOWN}`
      return fault(`\`${token}\` is no part of a time`, hint, index, index + token.length)
    } else steps.push({ read: null, literal: token.trim() === '' ? BLANK : token.charCodeAt(0) })
  }
  const has = (part: Part) => parts.has(part)
  if (has('hh') !== has('A')) {
    return has('hh')
      ? fault('`h` is an hour of twelve and needs `A`, for AM or PM', 'write `H` for an hour of 24')
      : fault('`A` stands beside an hour of 24', 'write `h` for the hour')
  }
  if (!(has('HH') || has('hh')) || !has('mm'))
    return fault(`\`${written}\` has no hour and minute`, `known are ${KNOWN}`)
  const date = [has('YYYY') || has('YY'), has('MM') || has('MMM'), has('DD')]
  if (date.includes(true) && date.includes(false))
    return fault(`\`${written}\` has only a part of the date`, 'write year, month and day, or none of them')
  return { ok: true, value: { steps, epoch: 0, hasDate: has('DD'), hasSeconds: has('ss') } }
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/** Days since 1970-01-01 in the Gregorian calendar; a leap day is the last of a year that begins in March. */
export function dayNumber(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const m = month <= 2 ? month + 9 : month - 3
  const leaps = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400)
  return 365 * y + leaps + Math.floor((153 * m + 2) / 5) + day - 1 - 719_468
}

const daysIn = (year: number, month: number) =>
  dayNumber(month === 12 ? year + 1 : year, month === 12 ? 1 : month + 1, 1) - dayNumber(year, month, 1)

/** A time being read: one object a cell, passed from part to part. */
type Reading = {
  readonly text: string
  readonly end: number
  at: number
  year: number
  month: number
  day: number
  hour: number
  minute: number
  second: number
  zone: number
  /** 0 in the morning, 12 after noon, −1 where nothing is said. */
  half: number
  places: number
}

/** A whole number of at most so many figures; NaN where there are fewer than `least`. */
function figures(reading: Reading, most: number, least = 1): number {
  let value = 0
  let count = 0
  while (count < most && reading.at < reading.end) {
    const figure = reading.text.charCodeAt(reading.at) - 48
    if (!(figure >= 0 && figure <= 9)) break
    value = value * 10 + figure
    count++
    reading.at++
  }
  return count < least ? Number.NaN : value
}

/** Seconds with their fraction, rounded once: the figures as a whole number over a power of ten. */
function seconds(reading: Reading): number {
  const whole = figures(reading, 2)
  const mark = reading.text.charCodeAt(reading.at)
  if (mark !== POINT && mark !== COMMA) return whole
  const from = reading.at
  reading.at++
  const fraction = figures(reading, MOST_PLACES, 0)
  reading.places = reading.at - from - 1
  if (reading.places === 0) reading.at = from
  const scale = 10 ** reading.places
  return (whole * scale + fraction) / scale
}

/** `found` must stand at the place that was reached; an empty match is one. */
function take(reading: Reading, pattern: RegExp, most: number): RegExpExecArray | null {
  const found = pattern.exec(reading.text.slice(reading.at, Math.min(reading.end, reading.at + most)))
  reading.at += found?.[0].length ?? 0
  return found
}

const READ: Readonly<Record<Part, (reading: Reading) => void>> = {
  YYYY: (reading) => {
    reading.year = figures(reading, 4, 4)
  },
  // POSIX strptime: 69 to 99 are of the last century.
  YY: (reading) => {
    const two = figures(reading, 2, 2)
    reading.year = two + (two >= 69 ? 1900 : 2000)
  },
  MMM: (reading) => {
    const name = take(reading, /^[A-Za-z]{3}/, 3)?.[0].toLowerCase() ?? ''
    reading.month = MONTHS.indexOf(name) + 1
  },
  MM: (reading) => {
    reading.month = figures(reading, 2)
  },
  DD: (reading) => {
    reading.day = figures(reading, 2)
  },
  HH: (reading) => {
    reading.hour = figures(reading, 2)
  },
  hh: (reading) => {
    const hour = figures(reading, 2)
    reading.hour = hour >= 1 && hour <= 12 ? hour % 12 : Number.NaN
  },
  mm: (reading) => {
    reading.minute = figures(reading, 2)
  },
  ss: (reading) => {
    reading.second = seconds(reading)
  },
  A: (reading) => {
    const half = take(reading, /^([ap])\.?m\.?/i, 4)?.[1]?.toLowerCase()
    reading.half = half === 'p' ? 12 : half === 'a' ? 0 : Number.NaN
  },
  Z: (reading) => {
    const first = reading.text.charCodeAt(reading.at)
    if (reading.at >= reading.end || (first !== CAPITAL_Z && first !== PLUS && first !== MINUS)) return
    const [, sign, hours = 0, minutes = 0] = take(reading, /^(?:Z|([+-])(\d\d):?(\d\d)?)/, 6) ?? []
    reading.zone = (sign === '-' ? -60 : 60) * (60 * Number(hours) + Number(minutes))
  },
}

/** Reads `[start, end)`; false where it is not written so, or is no time that there is. */
export function readTime(
  text: string,
  start: number,
  end: number,
  format: TimeFormat,
  seen: TimeSeen,
): boolean {
  if (format.epoch > 0) return readEpoch(text.slice(start, end), format.epoch, seen)
  const reading: Reading = {
    text,
    end,
    at: start,
    year: 1970,
    month: 1,
    day: 1,
    hour: 0,
    minute: 0,
    second: 0,
    zone: 0,
    half: 0,
    places: 0,
  }
  for (const { read, literal } of format.steps) {
    if (read) read(reading)
    else if (literal !== BLANK) {
      if (text.charCodeAt(reading.at++) !== literal) return false
    } else {
      if (!isBlank(text.charCodeAt(reading.at))) return false
      while (isBlank(text.charCodeAt(reading.at))) reading.at++
    }
  }
  if (reading.at !== end || !isTime(reading) || !isDate(reading)) return false
  seen.day = format.hasDate ? dayNumber(reading.year, reading.month, reading.day) : 0
  seen.seconds = 3600 * (reading.hour + reading.half) + 60 * reading.minute + reading.second
  seen.zone = reading.zone
  seen.places = reading.places
  return true
}

const isTime = ({ hour, minute, second, half }: Reading) =>
  hour <= 23 && minute <= 59 && second < 60 && half >= 0

const isDate = ({ year, month, day }: Reading) =>
  year >= 1 && month >= 1 && month <= 12 && day >= 1 && (day <= 28 || day <= daysIn(year, month))

function readEpoch(cell: string, perSecond: number, seen: TimeSeen): boolean {
  const found = /^\d{9,13}(?:[.,](\d+))?$/.exec(cell)
  if (!found) return false
  const seconds = Number(cell.replace(',', '.')) / perSecond
  seen.day = Math.floor(seconds / DAY)
  seen.seconds = seconds - DAY * seen.day
  seen.zone = 0
  seen.places = (found[1]?.length ?? 0) + Math.log10(perSecond)
  return true
}

const isBlank = (code: number) => code === 32 || code === 9 || code === 0xa0 || code === 0x202f
