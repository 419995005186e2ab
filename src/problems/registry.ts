/** The problem codes as Node finds them: every file of `codes/`, and of the `codes/` of every method. Nobody edits a list. */
import { existsSync, readdirSync } from 'node:fs'
import { isProblemCode } from './code.ts'
import type { ProblemCode } from './types.ts'

export async function loadCodes(): Promise<readonly ProblemCode[]> {
  const methods = new URL('../methods/', import.meta.url)
  const folders = [
    new URL('./codes/', import.meta.url),
    ...readdirSync(methods, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => new URL(`${entry.name}/codes/`, methods))
      .filter((folder) => existsSync(folder)),
  ]
  const files = folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.ts'))
      .map((name) => new URL(name, folder).href),
  )
  const modules = await Promise.all(files.sort().map((file): Promise<{ default?: unknown }> => import(file)))
  return modules.map((module) => module.default).filter(isProblemCode)
}
