/** Where a run lies and what it is called, from when and what it is. */
import type { RunState } from './state.ts'

const MOMENT = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)/

/** `wing-left/tank` → `wing-left-tank`, of a longer path the last two steps. */
const shortArticle = (article: string): string =>
  article === '' ? '' : `-${article.split('/').slice(-2).join('-')}`

/** `taken`: ids of runs that are there already; one more of the same minute gets a number behind it. */
export const runId = (
  { when, card, article }: Pick<RunState, 'when' | 'card' | 'article'>,
  taken: readonly string[] = [],
): string => {
  const [, year = '0000', month = '00', day = '00', hours = '00', minutes = '00'] =
    MOMENT.exec(when.trim()) ?? []
  const id = `${year}-${month}-${day}-${hours}${minutes}-${card}${shortArticle(article)}`
  if (!taken.includes(id)) return id
  const numbers = Array.from({ length: taken.length + 1 }, (_, index) => `${id}-${index + 2}`)
  return numbers.find((each) => !taken.includes(each)) ?? id
}

/** `records/runs/2026-03` */
export const runFolder = ({ when }: Pick<RunState, 'when'>): string => {
  const [, year = '0000', month = '00'] = MOMENT.exec(when.trim()) ?? []
  return `records/runs/${year}-${month}`
}

export const runPath = (
  state: Pick<RunState, 'when' | 'card' | 'article'>,
  taken: readonly string[] = [],
): string => `${runFolder(state)}/${runId(state, taken)}.md`

/** The name of a photo beside its run: `<run>-2.jpg`, the number one that is free. */
export const photoName = (id: string, original: string, used: readonly string[]): string => {
  const ending = (/\.([A-Za-z0-9]{1,5})$/.exec(original)?.[1] ?? 'jpg').toLowerCase().replace('jpeg', 'jpg')
  const numbers = Array.from({ length: used.length + 1 }, (_, index) => index + 1)
  const free = numbers.find((each) => !used.some((name) => name.startsWith(`${id}-${each}.`)))
  return `${id}-${free ?? used.length + 1}.${ending}`
}
