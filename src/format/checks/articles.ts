/** Articles and their parts by path. */
import type { Problem } from '../../problems/types.ts'
import type { FieldPath, SourceFile } from '../types.ts'
import type { World } from '../world.ts'
import { unknown } from './reference.ts'

/** Paths of all articles and of the leaf parts that stand in their files; made once a world. */
export function articlePaths(world: World): ReadonlySet<string> {
  const made = cache.get(world)
  if (made) return made
  const paths = new Set<string>()
  for (const { kind, id } of world.known.values()) if (kind === 'article') paths.add(id)
  for (const [id, article] of world.articles) for (const part of article.parts) paths.add(`${id}/${part}`)
  cache.set(world, paths)
  return paths
}

const cache = new WeakMap<World, ReadonlySet<string>>()

/** An article or part; a part of an article whose file is broken cannot be doubted. */
export function referArticle(world: World, id: string, source: SourceFile, path: FieldPath): Problem[] {
  const paths = articlePaths(world)
  if (paths.has(id) || underBroken(world, id)) return []
  return [
    unknown(`there is no article or part \`${id}\``, id, [...paths], source.locate(path), 'shared/articles'),
  ]
}

function underBroken(world: World, id: string): boolean {
  for (let at = id.lastIndexOf('/'); at > 0; at = id.lastIndexOf('/', at - 1)) {
    const parent = id.slice(0, at)
    if (world.known.get(parent)?.kind === 'article' && !world.articles.has(parent)) return true
  }
  return false
}
