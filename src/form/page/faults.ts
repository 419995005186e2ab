/** Problems of the file at their controls, and all of them in a list. */
import { errorsIn, type Finding } from '../finding.ts'
import { coded, h } from './dom.ts'
import type { Live } from './live.ts'

const sentence = ({ message, hint }: Finding): string => `${message}${hint ? `: ${hint}` : ''}`

const spotOf = (element: Element): string => element.getAttribute('data-spot') ?? ''

/**
 * Nobody is told of a field that was not reached yet: a field speaks once it was left, or once all is shown. Fields are
 * drawn anew, so what was touched is known by name.
 */
const watchTouches = (root: HTMLElement): ReadonlySet<string> => {
  const touched = new Set<string>()
  root.addEventListener('focusout', (event) => {
    const place = event.target instanceof Element ? event.target.closest('[data-spot]') : null
    if (place) touched.add(spotOf(place))
  })
  return touched
}

const placeOf = (root: HTMLElement, spot: string): Element | null => {
  const exact = root.querySelector(`[data-spot="${CSS.escape(spot)}"]`)
  const parent = spot.slice(0, Math.max(0, spot.lastIndexOf('.')))
  return exact ?? (parent === '' ? null : placeOf(root, parent))
}

const mark = (place: Element, text: string, severity: string): void => {
  const fault = place.querySelector(':scope > .fault')
  if (fault && fault.textContent !== text.replaceAll('`', '')) fault.replaceChildren(...coded(text))
  place.classList.toggle('wrong', severity === 'error' && text !== '')
  for (const control of place.querySelectorAll(':scope > :is(input, select, textarea)')) {
    if (severity === 'error' && text !== '') control.setAttribute('aria-invalid', 'true')
    else control.removeAttribute('aria-invalid')
  }
}

/** Keeps the faults at the controls of `root` as the newest preview has them. */
export const showFaults = (live: Live, root: HTMLElement): { readonly all: () => void } => {
  const touched = watchTouches(root)
  let everywhere = false
  const show = (findings: readonly Finding[]): void => {
    const at = new Map<Element, Finding[]>()
    for (const finding of findings) {
      const place = placeOf(root, finding.spot)
      if (place) at.set(place, [...(at.get(place) ?? []), finding])
    }
    for (const place of root.querySelectorAll('[data-spot]')) {
      const own = everywhere || touched.has(spotOf(place)) ? (at.get(place) ?? []) : []
      const severity = own.some((each) => each.severity === 'error') ? 'error' : 'warning'
      mark(place, own.map(sentence).join(' '), severity)
    }
  }
  live.onPreview(({ findings }) => show(findings))
  root.addEventListener('focusout', () => show(live.preview()?.findings ?? []))
  return {
    all: () => {
      everywhere = true
      show(live.preview()?.findings ?? [])
    },
  }
}

/** What stands in the way, each with a way to its control. */
export const todoList = (live: Live, root: HTMLElement): HTMLElement => {
  const box = h('div', { class: 'todo' })
  live.onPreview(({ findings }) => {
    const items = findings.map((finding) => {
      const place = placeOf(root, finding.spot)
      const control = place?.querySelector<HTMLElement>('input, select, textarea')
      const go = (): void => control?.focus()
      const words = sentence(finding)
      return h(
        'li',
        { class: finding.severity },
        ...(control
          ? [h('button', { type: 'button', class: 'link', click: go }, ...coded(words))]
          : coded(words)),
      )
    })
    const errors = errorsIn(findings)
    const head =
      errors > 0
        ? `${errors} still to do before the checker takes it:`
        : findings.length > 0
          ? 'The checker will take it, with remarks:'
          : 'The checker will take it without a remark.'
    box.replaceChildren(
      h('p', {}, h('strong', {}, head)),
      ...(items.length > 0 ? [h('ul', { class: 'list' }, ...items)] : []),
    )
  })
  return box
}
