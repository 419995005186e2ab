/** Files that only changed their name. Likeness is no ground: a new run would inherit the history of a deleted one. */

type Pair = { readonly path: string; readonly before: string | null; readonly blob: string | null }

/**
 * New path → old path, where in one commit one path went and one came with the very same content. Where several went
 * or came with that content, nobody can tell which became which, and none is followed.
 */
export function exactRenames(changes: readonly Pair[]): Map<string, string> {
  const gone = pathsByBlob(changes, ({ before, blob }) => (blob === null ? before : null))
  const renames = new Map<string, string>()
  if (gone.size === 0) return renames
  const come = pathsByBlob(changes, ({ before, blob }) => (before === null ? blob : null))
  for (const [blob, [from, another]] of gone) {
    const [to, further] = come.get(blob) ?? []
    if (from !== undefined && another === undefined && to !== undefined && further === undefined) {
      renames.set(to, from)
    }
  }
  return renames
}

function pathsByBlob(changes: readonly Pair[], blobOf: (change: Pair) => string | null) {
  const paths = new Map<string, string[]>()
  for (const change of changes) {
    const blob = blobOf(change)
    if (blob === null) continue
    const same = paths.get(blob)
    if (same) same.push(change.path)
    else paths.set(blob, [change.path])
  }
  return paths
}
