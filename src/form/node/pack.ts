/** The campaign as the forms hold it, read from its folder. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { TextFile } from '../../format/records.ts'
import type { Block, View } from '../../views/view.ts'

/** Files of runs whose results forms offer as givens. */
export const sourcesOf = (views: readonly View[]): string[] => {
  const forms = (blocks: readonly Block[]): string[] =>
    blocks.flatMap((block) => (block.is === 'record' ? block.form.sources : []))
  return [...new Set(views.flatMap((view) => forms(view.data.blocks)))].sort()
}

/** All of `shared/`, and these files beside it. */
export const packFiles = (root: string, more: readonly string[]): TextFile[] => {
  const names = readdirSync(join(root, 'shared'), { recursive: true, encoding: 'utf8' })
  const shared = names
    .map((name) => `shared/${name.replaceAll('\\', '/')}`)
    .filter((path) => /\.(?:md|ya?ml)$/.test(path))
  return [...shared.sort(), ...more].map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }))
}
