/** Whether what a record refers to is there; where it is not, the nearest names. */
import { makeProblem } from '../../problems/make.ts'
import type { Place, Problem } from '../../problems/types.ts'
import { nearest } from '../../quantity/nearest.ts'
import type { FileKind } from '../classify.ts'
import type { FieldPath, SourceFile } from '../types.ts'
import type { World } from '../world.ts'

const WHERE: Partial<Record<FileKind, string>> = {
  card: 'shared/cards',
  instrument: 'shared/instruments',
  gate: 'shared/gates',
  article: 'shared/articles',
  run: 'records/runs',
  item: 'records/items',
  rework: 'records/rework',
}

/** A file of one of the kinds, by id. A file that is there but broken counts as known. */
export function refer(
  world: World,
  kinds: readonly FileKind[],
  id: string,
  source: SourceFile,
  path: FieldPath,
): Problem[] {
  const found = world.known.get(id)
  if (found && kinds.includes(found.kind)) return []
  const candidates = [...world.known.values()]
    .filter((known) => kinds.includes(known.kind))
    .map((known) => known.id)
  const kind = kinds.join(' or ')
  if (found) {
    const message = `\`${id}\` is ${found.kind === 'article' || found.kind === 'item' || found.kind === 'instrument' ? 'an' : 'a'} ${found.kind}, not a ${kind}`
    return [unknown(message, id, candidates, source.locate(path), undefined)]
  }
  const folder = kinds.length === 1 && kinds[0] ? WHERE[kinds[0]] : undefined
  return [unknown(`there is no ${kind} \`${id}\``, id, candidates, source.locate(path), folder)]
}

/** People stand in one file; where that could not be read, no name is doubted. */
export function referPeople(
  world: World,
  people: readonly (readonly [id: string | undefined, path: FieldPath])[],
  source: SourceFile,
): Problem[] {
  const known = world.people
  if (known === undefined) return []
  return people.flatMap(([id, path]) =>
    id === undefined || Object.hasOwn(known, id)
      ? []
      : [
          unknown(
            `\`${id}\` is not among the people`,
            id,
            Object.keys(known),
            source.locate(path),
            'shared/people.yaml',
          ),
        ],
  )
}

export function unknown(
  message: string,
  id: string,
  candidates: readonly string[],
  at: Place,
  folder: string | undefined,
): Problem {
  const near = nearest(id, candidates)
  const few = near.length > 0 ? near : candidates.length <= 8 ? candidates : []
  const hint = near[0] ? `\`${near[0]}\` is close` : folder && `it would stand in \`${folder}\``
  return makeProblem({ code: 'reference/unknown', message, at, actual: id, expected: few, hint })
}
