/** Files as such: where they lie, what they are called, which must be there. */
import { makeProblem } from '../../problems/make.ts'
import { placeOfFile } from '../../problems/place.ts'
import type { Problem } from '../../problems/types.ts'
import type { Known } from '../world.ts'

type Owned = { readonly path: string; readonly problem: Problem }

export function unknownPlace(path: string, { message, hint }: { message: string; hint: string }): Problem {
  return makeProblem({ code: 'file/place', message, at: placeOfFile(path), hint })
}

/** Ids are unique across kinds and folders, by case too: the later path is at fault, and both are named. */
export function idProblems(known: readonly Known[]): Owned[] {
  const first = new Map<string, Known>()
  const problems: Owned[] = []
  for (const entry of [...known].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    if (entry.kind === 'campaign' || entry.kind === 'people') continue
    const id = entry.id.toLowerCase()
    const other = first.get(id)
    if (other === undefined) {
      first.set(id, entry)
      continue
    }
    const problem = makeProblem({
      code: 'file/double-id',
      message: `the id \`${entry.id}\` is taken by another file`,
      at: placeOfFile(entry.path),
      why: 'the id of a thing is the name of its file, across all folders and kinds',
      hint: 'rename one of the two',
      related: [{ message: 'the same id', at: placeOfFile(other.path) }],
    })
    problems.push({ path: entry.path, problem })
  }
  return problems
}

export function missingFiles(known: readonly Known[]): Owned[] {
  return (['campaign', 'people'] as const).flatMap((kind) => {
    if (known.some((entry) => entry.kind === kind)) return []
    const path = `shared/${kind}.yaml`
    const hint =
      kind === 'campaign'
        ? 'write it with at least `title: …` and `purpose: …`'
        : 'write it with one person a line, as in `moduya: {name: …, roles: [record]}`'
    const problem = makeProblem({
      code: 'file/not-there',
      message: `there is no file \`${path}\``,
      at: placeOfFile(path),
      hint,
    })
    return [{ path, problem }]
  })
}
