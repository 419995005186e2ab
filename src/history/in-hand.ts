/** Which state of the main line somebody has in hand who works in this folder. */
import { indexOf } from './lookup.ts'
import { versionIn } from './state.ts'
import type { History } from './types.ts'

export type InHand =
  | { readonly revision: string }
  /** Why there is none to name. */
  | { readonly revision: null; readonly why: string }

/**
 * The newest commit of the main line that HEAD is made of, where the file lies here as it is in that commit; a branch
 * that is behind has the older state in hand.
 */
export const inHand = (history: History, path: string): InHand => {
  if (history.state === 'unknown') return { revision: null, why: history.message }
  const { inHead } = indexOf(history)
  const revision = history.line.findLast((hash) => inHead.has(hash))
  const landed = revision === undefined ? null : versionIn(history, path, revision)
  if (revision === undefined || !landed)
    return { revision: null, why: `${path} has not reached the main line yet` }
  if (landed.blob !== history.blobs.get(path))
    return { revision: null, why: `${path} lies here changed, and that has not reached the main line yet` }
  return { revision }
}
