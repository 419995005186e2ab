/** Beyond the stop-at value: said at once and loudly, by shape, word, colour and vibration. */
import { alarmOf, type Beyond, beyondStop, seenMark } from '../stop.ts'
import { button, h, svg } from './dom.ts'
import type { Live } from './live.ts'

const octagon = (): SVGElement =>
  svg(
    'svg',
    { viewBox: '0 0 100 100', 'aria-hidden': 'true' },
    svg('path', { d: 'M30 3h40l27 27v40l-27 27h-40l-27 -27v-40z' }),
    svg('text', { x: 50, y: 60, 'text-anchor': 'middle' }, 'STOP'),
  )

/** So many readings are named; of more it is said how many. */
const MOST_NAMED = 3

const wordsOf = (open: readonly Beyond[]): string => {
  const more = open.length - MOST_NAMED
  const named = open.slice(-MOST_NAMED).map((each) => each.words)
  return [...(more > 0 ? [`${more} more ${more === 1 ? 'is' : 'are'} beyond.`] : []), ...named].join(' ')
}

/** Looks at every change, however the reading came in: typed, pasted, or by another unit. */
export const stopAlarm = (live: Live): HTMLElement => {
  const element = h('div', { class: 'stop-alarm', role: 'alert', 'aria-live': 'assertive', hidden: true })
  const seen = new Set<string>()
  let announced: readonly Beyond[] = []
  let words = ''
  const look = (): void => {
    const { open, isNew } = alarmOf(beyondStop(live.state(), live.view.columns), seen, announced)
    announced = open
    if (wordsOf(open) === words) return
    words = wordsOf(open)
    element.hidden = words === ''
    element.replaceChildren()
    if (element.hidden) return
    element.append(
      octagon(),
      h('p', {}, h('strong', {}, 'Stop. '), `${words} Make it safe, then note what was seen.`),
      button('Seen', () => {
        for (const each of announced) seen.add(seenMark(each))
        look()
      }),
    )
    if (!isNew) return
    // Not every device has it, and some refuse it.
    navigator.vibrate?.([500, 150, 500, 150, 500])
    element.scrollIntoView({ block: 'nearest' })
  }
  live.onChange(look)
  look()
  return element
}
