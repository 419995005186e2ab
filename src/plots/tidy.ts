/** Vega's SVG as the page needs it: named for screen readers, fluid in width, without what draws nothing. */
import type { Plot } from '../views/view.ts'

export const escapeText = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

const shorten = (number: string): string => String(Math.round(Number(number) * 100) / 100)

export const tidySvg = (svg: string, plot: Plot): string => {
  const title = `${plot.id}-title`
  const description = `${plot.id}-description`
  const names = `<title id="${title}">${escapeText(plot.title)}</title><desc id="${description}">${escapeText(plot.alt)}</desc>`
  return svg
    .replace(
      /<svg [^>]*viewBox="([^"]*)"[^>]*>/,
      `<svg viewBox="$1" role="img" aria-labelledby="${title} ${description}">${names}`,
    )
    .replace(/<text [^>]*opacity="0"[^>]*>[^<]*<\/text>/g, '')
    .replace(/<path class="(?:foreground|background)"[^>]*\/>/g, '')
    .replace(
      / (?:class|role|aria-roledescription|aria-hidden|pointer-events|font-family|opacity)="(?:[a-z0-9_ -]*|1)"/g,
      (attribute) =>
        attribute.startsWith(' role="img"') || / opacity="0?\.\d+"/.test(attribute) ? attribute : '',
    )
    .replace(/<[^>]*>/g, (tag) => tag.replace(/\d+\.\d{3,}/g, shorten))
    .replace('«x»', escapeText(plot.x))
    .replace('«y»', escapeText(plot.y))
}
