/**
 * The parser of mathjs by itself: its package exports it only together with all the rest, which takes 0.3 s to load.
 * Its own types leave the factories out.
 */
declare module '*/mathjs/lib/esm/expression/parse.js' {
  import type { Draft } from './drafts.ts'

  export const createParse: (dependencies: Readonly<Record<string, unknown>>) => (text: string) => Draft
}
