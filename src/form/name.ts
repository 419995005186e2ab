/** Where a run lies and what it is called, from when and what it is. */
import type { RunState } from './state.ts'

const MOMENT = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)/

/** `wing-left/tank` → `wing-left-tank`, of a longer path the last two steps. */
const shortArticle = (article: string): string =>
  article === '' ? '' : `-${article.split('/').slice(-2).join('-')}`

/**
 * `taken`: ids of runs that are there already; one more of the same minute gets a number behind it. `known`: what this
 * very run was called when it was handed in or opened; it keeps that as long as its time and article agree, and for good
 * once it has landed: another name would make a second run of it.
 */
export const runId = (
  { when, card, article }: Pick<RunState, 'when' | 'card' | 'article'>,
  taken: readonly string[] = [],
  known = '',
): string => {
  if (taken.includes(known)) return known
  const [, year = '0000', month = '00', day = '00', hours = '00', minutes = '00'] =
    MOMENT.exec(when.trim()) ?? []
  const id = `${year}-${month}-${day}-${hours}${minutes}-${card}${shortArticle(article)}`
  if (known === id || (known.startsWith(`${id}-`) && isNumber(known.slice(id.length + 1)))) return known
  if (!taken.includes(id)) return id
  const numbers = Array.from({ length: taken.length + 1 }, (_, index) => `${id}-${index + 2}`)
  return numbers.find((each) => !taken.includes(each)) ?? id
}

/** The first of a minute has no number, so numbers begin at 2. */
const isNumber = (text: string): boolean => /^(?:[2-9]|[1-9]\d+)$/.test(text)

/** `records/runs/2026-03` */
export const runFolder = ({ when }: Pick<RunState, 'when'>): string => {
  const [, year = '0000', month = '00'] = MOMENT.exec(when.trim()) ?? []
  return `records/runs/${year}-${month}`
}

export const runPath = (
  state: Pick<RunState, 'when' | 'card' | 'article'>,
  taken: readonly string[] = [],
): string => `${runFolder(state)}/${runId(state, taken)}.md`

/** MIME types of what may go beside a run, with their endings. */
const ENDINGS: Readonly<Record<string, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'application/pdf': 'pdf',
}

export const PHOTO_TYPES: readonly string[] = Object.keys(ENDINGS)

/** The MIME type of a photo by its name; empty where it has another ending. */
export const photoType = (name: string): string =>
  PHOTO_TYPES.find((type) => name.toLowerCase().endsWith(`.${ENDINGS[type]}`)) ?? ''

const numberOf = (id: string, file: string): string =>
  file.startsWith(`${id}-`) ? (/^(\d+)\.[a-z0-9]+$/.exec(file.slice(id.length + 1))?.[1] ?? '') : ''

/** The name of a photo beside its run: `<run>-2.jpg`, the number behind the highest. `type` is its MIME type. */
export const photoName = (id: string, original: string, type: string, used: readonly string[]): string => {
  const own = /\.([A-Za-z0-9]{1,5})$/.exec(original)?.[1] ?? ENDINGS[type] ?? 'jpg'
  const last = Math.max(0, ...used.map((name) => Number(numberOf(id, name))))
  return `${id}-${last + 1}.${own.toLowerCase().replace('jpeg', 'jpg')}`
}

/** What the browser keeps a photo under: the part of its name that does not change with that of the run. */
export const photoKey = (id: string, file: string): string =>
  numberOf(id, file) === '' ? file : file.slice(id.length + 1)

const dataOf = ({ data }: RunState, id: string): RunState['data'] => {
  const file = data?.file
  return data && typeof file === 'string'
    ? { ...data, file: `${id}.${/\.([A-Za-z0-9]+)$/.exec(file)?.[1] ?? 'csv'}` }
    : data
}

/** Photos and data have the name of their run: `before` is what it was called until now, `id` what it is called. */
export const named = (state: RunState, before: string, id: string): RunState => {
  const data = dataOf(state, id)
  if (before === id) return { ...state, data }
  const files = state.files.map((each) => ({
    ...each,
    file: numberOf(before, each.file) === '' ? each.file : `${id}-${photoKey(before, each.file)}`,
  }))
  const body = state.files.reduce(
    (text, { file }, at) => text.replaceAll(file, files[at]?.file ?? file),
    state.body,
  )
  return { ...state, data, files, body }
}
