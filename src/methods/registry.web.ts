/** Finds a method as the bundler does: one chunk a folder, fetched when it is asked for. Nobody edits a list. */
import type { Method } from './method.ts'

const found = import.meta.glob<Method>('./*/index.ts', { import: 'default' })

/** Undefined where there is no such method. */
export const loadMethod = async (id: string): Promise<Method | undefined> => found[`./${id}/index.ts`]?.()
