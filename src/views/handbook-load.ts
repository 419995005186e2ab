/** The edge: reads the folders of the methods, the functions and the problem codes for the handbook. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { FUNCTIONS } from '../functions/index.ts'
import type { CheckValue } from '../methods/check-values.ts'
import type { StoredCoverage } from '../methods/coverage.ts'
import { loadMethods } from '../methods/registry.ts'
import { loadCodes } from '../problems/registry.ts'
import type { Handbook } from './handbook.ts'

const isCheckValue = (value: unknown): value is CheckValue =>
  typeof value === 'object' &&
  value !== null &&
  'title' in value &&
  'origin' in value &&
  'inputs' in value &&
  'expected' in value

const checksOf = (folder: URL): CheckValue[] => {
  if (!existsSync(folder)) return []
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
  return files.flatMap((name) => {
    const content: unknown = JSON.parse(readFileSync(new URL(name, folder), 'utf8'))
    return (Array.isArray(content) ? content : [content]).filter(isCheckValue)
  })
}

const isCoverage = (value: unknown): value is StoredCoverage =>
  typeof value === 'object' && value !== null && 'rows' in value && 'runs' in value

const coverageOf = (file: URL): StoredCoverage | null => {
  const content: unknown = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null
  return isCoverage(content) ? content : null
}

const textOf = (file: URL): string => (existsSync(file) ? readFileSync(file, 'utf8') : '')

export const loadHandbook = async (): Promise<Handbook> => {
  const [methods, codes] = await Promise.all([loadMethods(), loadCodes()])
  const entries = Object.values(methods).map((method) => {
    const folder = new URL(`../methods/${method.id}/`, import.meta.url)
    return {
      method,
      handbook: textOf(new URL('handbook.md', folder)),
      checks: checksOf(new URL('check-values/', folder)),
      coverage: coverageOf(new URL('coverage.json', folder)),
    }
  })
  return { methods: entries, functions: Object.values(FUNCTIONS), codes }
}
