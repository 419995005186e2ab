/** Drawing a part of the page anew. */
import type { Live } from './live.ts'

const nameOf = (element: Element): string =>
  element.getAttribute('aria-label') ??
  ('labels' in element && element.labels instanceof NodeList ? element.labels[0]?.textContent : null) ??
  element.textContent

/** Draws anew what `root` holds: the control that had the cursor has it again, where there is still one of its name. */
export const redrawn = (root: Element, draw: () => void): void => {
  const active = document.activeElement
  const name = active && root.contains(active) ? nameOf(active) : null
  draw()
  if (name === null || root.contains(document.activeElement)) return
  const controls = [...root.querySelectorAll<HTMLElement>('input, select, textarea, button')]
  controls.find((each) => nameOf(each) === name)?.focus()
}

/** Draws now, and anew whenever what it depends on (`keyOf`) is another. */
export const drawnBy = (live: Live, root: Element, keyOf: () => string, draw: () => void): void => {
  let drawn = keyOf()
  draw()
  live.onChange(() => {
    const key = keyOf()
    if (key === drawn) return
    drawn = key
    redrawn(root, draw)
  })
}
