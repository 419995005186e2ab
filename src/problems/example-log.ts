/** The logger file of the examples, as its front matter reads it: each code shows what it changes in it. */

export const READINGS = `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: Weg, unit: mm}`

const NAMES = `Zeit;Kraft;Weg
hh:mm:ss;N;mm
`

/** A data file with these rows below its lines of names and units. */
export const logOf = (...rows: readonly string[]): string =>
  `${NAMES}${rows.map((row) => `${row}\n`).join('')}`

export const LOG = logOf('09:12:00;0,5;0,00', '09:12:01;50,5;11,02')
