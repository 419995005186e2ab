/** What git prints about the files of the working folder, as lists. */

/** Paths in `git status --porcelain=v2 -z --no-renames`: changed, staged, unmerged, not tracked, ignored. */
export function parseStatus(text: string): string[] {
  return text.split('\0').flatMap((entry) => {
    // How many fields stand before the path, by the kind of entry.
    const fields = { '1': 8, u: 10, '?': 1, '!': 1 }[entry[0] ?? '']
    if (fields === undefined) return []
    return [entry.split(' ').slice(fields).join(' ')]
  })
}

export type Tree = {
  readonly files: ReadonlyMap<string, string>
  /** Links and modules: git keeps where they point, not what is there. */
  readonly links: readonly string[]
}

/** `git ls-tree -r -z`: path → blob of files. */
export function parseTree(text: string): Tree {
  const files = new Map<string, string>()
  const links: string[] = []
  for (const entry of text.split('\0')) {
    const tab = entry.indexOf('\t')
    if (tab < 0) continue
    const [mode = '', , blob = ''] = entry.slice(0, tab).split(' ')
    const path = entry.slice(tab + 1)
    if (mode.startsWith('100')) files.set(path, blob)
    else links.push(path)
  }
  return { files, links }
}

/** `git ls-files -v -z`: tracked paths, and those whose changes git was told not to look for. */
export function parseTracked(text: string): { tracked: Set<string>; unwatched: string[] } {
  const entries = text.split('\0').filter((entry) => entry.length > 2)
  return {
    tracked: new Set(entries.map((entry) => entry.slice(2))),
    unwatched: entries.filter((entry) => /^[a-zS]/.test(entry)).map((entry) => entry.slice(2)),
  }
}
