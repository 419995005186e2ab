/** Finds the methods in Node: every folder beside this file. Nobody edits a list. */
import { existsSync, readdirSync } from 'node:fs'
import type { Coverage } from './coverage.ts'
import type { Method } from './method.ts'

const hasMethod = (module: unknown): module is { default: Method } =>
  typeof module === 'object' && module !== null && 'default' in module

let found: Promise<Readonly<Record<string, Method>>> | undefined

const find = async (): Promise<Readonly<Record<string, Method>>> => {
  const folders = readdirSync(new URL('./', import.meta.url), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
  const methods: Record<string, Method> = {}
  for (const folder of folders) {
    const module: unknown = await import(new URL(`./${folder}/index.ts`, import.meta.url).href)
    if (!hasMethod(module)) throw new Error(`src/methods/${folder}/index.ts has no default export`)
    methods[folder] = module.default
  }
  return methods
}

/** Method id → method; read once a process. */
export const loadMethods = (): Promise<Readonly<Record<string, Method>>> => {
  found ??= find()
  return found
}

const hasCoverage = (module: unknown): module is { coverage: Coverage } =>
  typeof module === 'object' && module !== null && 'coverage' in module

/** Method id → its set-ups for simulation, where it has them: for the command and the tests alone. */
export const loadCoverages = async (): Promise<Readonly<Record<string, Coverage>>> => {
  const found: Record<string, Coverage> = {}
  for (const id of Object.keys(await loadMethods())) {
    const file = new URL(`./${id}/coverage.ts`, import.meta.url)
    if (!existsSync(file)) continue
    const module: unknown = await import(file.href)
    if (hasCoverage(module)) found[id] = module.coverage
  }
  return found
}
