/** The problem codes as the bundler finds them; the same files as `registry.ts` reads. */
import { isProblemCode } from './code.ts'
import type { ProblemCode } from './types.ts'

const modules = import.meta.glob<unknown>(['./codes/*.ts', '../methods/*/codes/*.ts'], {
  eager: true,
  import: 'default',
})

export const CODES: readonly ProblemCode[] = Object.keys(modules)
  .sort()
  .map((file) => modules[file])
  .filter(isProblemCode)
