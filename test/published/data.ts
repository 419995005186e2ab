/** The tables in `data/`: comment lines with the source, one row of names, then numbers. */
import { readFileSync } from 'node:fs'

type Row = Readonly<Record<string, string>>

export function readTable(name: string): Row[] {
  const text = readFileSync(new URL(`data/${name}.csv`, import.meta.url), 'utf8')
  const [head = '', ...rows] = text.split(/\r?\n/).filter((line) => line !== '' && !line.startsWith('#'))
  const names = head.split(',')
  return rows.map((row) => Object.fromEntries(row.split(',').map((cell, i) => [names[i] ?? '', cell])))
}

export function column(rows: readonly Row[], name: string): number[] {
  return rows.map((row) => Number(row[name]))
}

/** A certified value of the NIST StRD. */
export function certified(dataset: string, quantity: string): number {
  const row = readTable('nist_strd_certified').find(
    (each) => each.dataset === dataset && each.quantity === quantity,
  )
  return Number(row?.value)
}

/** Relative difference, for messages that show how far off a value is. */
export function relativeError(actual: number, expected: number): number {
  return actual === expected ? 0 : Math.abs(actual - expected) / Math.abs(expected)
}
