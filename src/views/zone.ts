/** Times from git in the time zone of the records: one clock on every page, whoever's computer made the commit. */

/** `+01:00` of a moment in a zone, or null where nobody knows the zone. */
const partsOf = (formatter: Intl.DateTimeFormat, iso: string): Readonly<Record<string, string>> =>
  Object.fromEntries(formatter.formatToParts(new Date(iso)).map(({ type, value }) => [type, value]))

/** Fixed fields of a fixed calendar: the language only says how the offset is written. */
const formatterFor = (timeZone: string): Intl.DateTimeFormat | null => {
  try {
    return new Intl.DateTimeFormat('en-US-u-ca-iso8601-nu-latn', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
      timeZoneName: 'longOffset',
    })
  } catch {
    return null
  }
}

/**
 * ISO 8601 with offset → the same moment in another zone, to the minute, with its offset there. Where the zone is not
 * known, or the text is no time, as it was written.
 */
export const zoned = (timeZone: string): ((iso: string) => string) => {
  const formatter = formatterFor(timeZone)
  return (iso) => {
    if (
      formatter === null ||
      !/T\d{2}:\d{2}.*(?:Z|[+-]\d{2}:?\d{2})$/.test(iso) ||
      Number.isNaN(Date.parse(iso))
    )
      return iso
    const {
      year = '',
      month = '',
      day = '',
      hour = '',
      minute = '',
      timeZoneName = '',
    } = partsOf(formatter, iso)
    const offset = /[+-]\d{2}:\d{2}/.exec(timeZoneName)?.[0] ?? '+00:00'
    return `${year}-${month}-${day}T${hour}:${minute}${offset}`
  }
}
