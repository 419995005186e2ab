/** What is to be reached on the article in hand: at hand beside the readings; that of other articles is put away. */
import { articleOf } from '../state.ts'
import { reachId } from '../view.ts'
import { h } from './dom.ts'
import { drawnBy } from './draw.ts'
import type { Live } from './live.ts'

const sectionOf = (article: string): HTMLElement | null => document.getElementById(reachId(article))

/** A copy without ids: a page has each of them once. */
const copyOf = (section: HTMLElement): Node[] => {
  const copy = section.cloneNode(true) as HTMLElement
  for (const element of copy.querySelectorAll('[id]')) element.removeAttribute('id')
  copy.querySelector('h3')?.remove()
  return [...copy.childNodes]
}

export const reachPart = (live: Live): HTMLElement => {
  const { articles } = live.view
  const box = h('div')
  const details = h('details', {}, h('summary', {}, 'What to reach'), box)
  const inHand = (): string => articleOf(live.state(), articles)
  const show = (): void => {
    const article = inHand()
    for (const each of articles)
      sectionOf(each)?.toggleAttribute('hidden', article !== '' && each !== article)
    const section = sectionOf(article)
    details.hidden = section === null
    box.replaceChildren(...(section ? copyOf(section) : []))
  }
  drawnBy(live, box, inHand, show)
  return details
}
