/** Names close to one that was not found. */

/** Edits (insert, delete, replace, swap of neighbours) that turn one word into the other. */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let cost = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, (beforeLast[j - 2] ?? 0) + 1)
      }
      row.push(cost)
    }
    beforeLast = last
    last = row
  }
  return last[b.length] ?? 0
}

/** At most four of the candidates, nearest first; none that differs in more than about a third of its letters. */
export function nearest(name: string, candidates: Iterable<string>): string[] {
  const wanted = name.toLowerCase()
  const near: { candidate: string; distance: number }[] = []
  for (const candidate of candidates) {
    const allowed = name.length < 2 ? 0 : Math.max(1, Math.floor(Math.max(name.length, candidate.length) / 3))
    if (Math.abs(candidate.length - name.length) > allowed) continue
    // A wrong case is less of a difference than a wrong letter.
    const distance = editDistance(wanted, candidate.toLowerCase())
    if (distance <= allowed) near.push({ candidate, distance })
  }
  near.sort((a, b) => a.distance - b.distance || (a.candidate < b.candidate ? -1 : 1))
  return near.slice(0, 4).map((entry) => entry.candidate)
}
