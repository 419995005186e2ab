/** The views of this build, read once from the working folder (not relative to this file: the build moves it). */
import { readFileSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import type { View } from './view.ts'

export type ViewsFile = { readonly root: string; readonly views: readonly View[] }

const isView = (value: unknown): value is View =>
  typeof value === 'object' &&
  value !== null &&
  'path' in value &&
  'kind' in value &&
  'data' in value &&
  'key' in value

const isViewsFile = (value: unknown): value is ViewsFile =>
  typeof value === 'object' &&
  value !== null &&
  'root' in value &&
  typeof value.root === 'string' &&
  'views' in value &&
  Array.isArray(value.views) &&
  value.views.every(isView)

export const viewsFile = (): string => resolve(process.env.VIEWS_FILE ?? '.cache/views.json')

const read = (): ViewsFile => {
  const file = viewsFile()
  const value: unknown = JSON.parse(readFileSync(file, 'utf8'))
  if (!isViewsFile(value))
    throw new Error(`${file} does not hold the views of a site; make them with npm run build`)
  return value
}

let loaded: { readonly file: ViewsFile; readonly written: number } | undefined

/** The folder that holds the records, and a view for every page. Read again when it was written anew. */
export const loadViews = (): ViewsFile => {
  const written = statSync(viewsFile()).mtimeMs
  if (loaded?.written !== written) loaded = { file: read(), written }
  return loaded.file
}

/** The same page as its view stands now; as it was where there is no such page any more. */
export const viewNow = (view: View): View => loadViews().views.find((each) => each.path === view.path) ?? view
