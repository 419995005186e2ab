/** Rings of references: a thing that in the end rests on itself. */
import { makeProblem } from '../../problems/make.ts'
import type { Place, Problem } from '../../problems/types.ts'

export type Edge = { readonly to: string; readonly at: () => Place }

/** One problem a ring, at its alphabetically first member; the message shows the whole ring. */
export function ringProblems(
  graph: ReadonlyMap<string, readonly Edge[]>,
  say: (ring: string) => string,
  hint: string,
): { readonly id: string; readonly problem: Problem }[] {
  const found = new Map<string, { id: string; problem: Problem }>()
  const done = new Set<string>()
  for (const start of [...graph.keys()].sort()) {
    const path: string[] = []
    const open: { id: string; next: number }[] = [{ id: start, next: 0 }]
    if (done.has(start)) continue
    path.push(start)
    while (open.length > 0) {
      const top = open.at(-1)
      if (top === undefined) break
      const edge = graph.get(top.id)?.[top.next++]
      if (edge === undefined) {
        done.add(top.id)
        open.pop()
        path.pop()
      } else if (path.includes(edge.to)) {
        const ring = fromFirst(path.slice(path.indexOf(edge.to)))
        const [id = ''] = ring
        const next = ring[1] ?? id
        const at =
          graph
            .get(id)
            ?.find((edge) => edge.to === next)
            ?.at() ?? edge.at()
        const message = say([...ring, id].map((id) => `\`${id}\``).join(' → '))
        const problem = makeProblem({ code: 'reference/cycle', message, at, hint })
        found.set(ring.join(' '), { id, problem })
      } else if (!done.has(edge.to) && graph.has(edge.to)) {
        open.push({ id: edge.to, next: 0 })
        path.push(edge.to)
      }
    }
  }
  return [...found.values()]
}

function fromFirst(ring: readonly string[]): string[] {
  const first = [...ring].sort()[0] ?? ''
  const at = ring.indexOf(first)
  return [...ring.slice(at), ...ring.slice(0, at)]
}
