/** Finds the methods in Node: every folder beside this file. Nobody edits a list. */
import { readdirSync } from 'node:fs'
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
