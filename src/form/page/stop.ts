/** Beyond the stop-at value: said at once and loudly, by shape, word, colour and vibration. */
import { beyondStop } from '../stop.ts'
import { button, h, svg } from './dom.ts'
import type { Live } from './live.ts'

export const stopAlarm = (live: Live): { readonly element: HTMLElement; readonly look: () => void } => {
  const element = h('div', { class: 'stop-alarm', role: 'alert', 'aria-live': 'assertive', hidden: true })
  let said = ''
  let seen = ''
  const octagon = () =>
    svg(
      'svg',
      { viewBox: '0 0 100 100', 'aria-hidden': 'true' },
      svg('path', { d: 'M30 3h40l27 27v40l-27 27h-40l-27 -27v-40z' }),
      svg('text', { x: 50, y: 60, 'text-anchor': 'middle' }, 'STOP'),
    )
  const look = (): void => {
    const beyond = beyondStop(live.state(), live.view.columns)
    const words = beyond.map((each) => each.words).join(' ')
    if (words === said) return
    said = words
    element.hidden = words === '' || words === seen
    element.replaceChildren()
    if (element.hidden) return
    element.append(
      octagon(),
      h('p', {}, h('strong', {}, 'Stop. '), `${words} Make it safe, then note what was seen.`),
      button('Seen', () => {
        seen = said
        element.hidden = true
      }),
    )
    // Not every device has it, and some refuse it.
    navigator.vibrate?.([500, 150, 500, 150, 500])
    element.scrollIntoView({ block: 'nearest' })
  }
  look()
  return { element, look }
}
