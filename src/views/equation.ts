/** TeX to MathML, without `style` attributes (the pages' content policy allows none). */
import temml from 'temml'

/** Null where the TeX cannot be read; the caller shows it as it is written. A long one scrolls in a box of its own. */
export const equation = (tex: string, display: boolean): string | null => {
  try {
    const math = temml.renderToString(tex, {
      displayMode: display,
      throwOnError: true,
      wrap: display ? 'none' : 'tex',
    })
    const plain = math.replace(/ style="[^"]*"/g, '')
    return display ? `<div class="equation" tabindex="0">${plain}</div>` : plain
  } catch {
    return null
  }
}
