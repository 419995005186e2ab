/** Markdown of a record as HTML that may stand on any page: no HTML of its own, addresses checked, headings lowered. */
import { Marked } from 'marked'
import { equation } from './equation.ts'
import { besideRecord, isServed } from './files.ts'
import type { Site } from './site.ts'

export type Prose = { readonly html: string; readonly files: readonly string[] }

const escapeHtml = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;')

const OUTSIDE = /^(?:https?:\/\/|mailto:)/i

/** Where an address written in a record leads: out, to a page of the site, to a file beside the record, or nowhere. */
const resolveAddress = (
  address: string,
  record: string,
  site: Site,
): { to: string; file?: string } | null => {
  if (OUTSIDE.test(address)) return { to: address }
  if (/^[a-z][a-z0-9+.-]*:/i.test(address) || address.startsWith('//')) return null
  const [path = '', anchor = ''] = address.split('#')
  const id = (path.split('/').pop() ?? '').replace(/\.md$/, '')
  const article = /(?:^|\/)articles\/(.+)\.md$/.exec(path)?.[1]
  const page = site.page(article ?? path) ?? site.page(id)
  if (page !== null)
    return { to: `base:${encodeURI(page)}${anchor && !page.includes('#') ? `#${anchor}` : ''}` }
  const file = besideRecord(record, decodeURI(path))
  return file !== null && isServed(file) ? { to: `base:files/${encodeURI(file)}`, file } : null
}

const mathBlock = {
  name: 'mathBlock',
  level: 'block' as const,
  start: (text: string) => text.indexOf('$$'),
  tokenizer: (text: string) => {
    const match = /^\$\$([\s\S]+?)\$\$(?:\n|$)/.exec(text)
    return match ? { type: 'mathBlock', raw: match[0], text: (match[1] ?? '').trim() } : undefined
  },
  renderer: (token: { text?: string }) => {
    const tex = token.text ?? ''
    return equation(tex, true) ?? `<pre><code>${escapeHtml(tex)}</code></pre>`
  },
}

const mathInline = {
  name: 'mathInline',
  level: 'inline' as const,
  start: (text: string) => text.indexOf('$'),
  tokenizer: (text: string) => {
    const match = /^\$([^\s$](?:[^$\n]*[^\s$])?)\$(?!\d)/.exec(text)
    return match ? { type: 'mathInline', raw: match[0], text: match[1] ?? '' } : undefined
  },
  renderer: (token: { text?: string }) => {
    const tex = token.text ?? ''
    return equation(tex, false) ?? `<code>${escapeHtml(tex)}</code>`
  },
}

/** `lower`: by how much headings go down, so that they fit under the section that holds them. */
export const proseOf = (
  markdown: string,
  record: string,
  site: Site,
  lower = 1,
  mathematics = false,
): Prose => {
  const files: string[] = []
  const marked = new Marked({ gfm: true, async: false })
  if (mathematics) marked.use({ extensions: [mathBlock, mathInline] })
  marked.use({
    renderer: {
      html: ({ text }) => escapeHtml(text),
      heading({ tokens, depth }) {
        const level = Math.min(6, Math.max(2, depth + lower))
        return `<h${level}>${this.parser.parseInline(tokens)}</h${level}>\n`
      },
      link({ href, tokens }) {
        const inner = this.parser.parseInline(tokens)
        const found = resolveAddress(href, record, site)
        if (found?.file) files.push(found.file)
        return found ? `<a href="${escapeHtml(found.to)}">${inner}</a>` : inner
      },
      image({ href, text }) {
        const found = resolveAddress(href, record, site)
        if (!found?.file) return escapeHtml(text)
        files.push(found.file)
        return `<img src="${escapeHtml(found.to)}" alt="${escapeHtml(text)}" loading="lazy">`
      },
      code: ({ text }) => `<pre tabindex="0"><code>${escapeHtml(text)}</code></pre>\n`,
      checkbox: ({ checked }) => (checked ? '☑ ' : '☐ '),
      table(token) {
        const cell = (
          part: { tokens: (typeof token.header)[number]['tokens']; align: string | null },
          name: string,
        ): string =>
          `<${name}${part.align ? ` class="align-${part.align}"` : ''}>${this.parser.parseInline(part.tokens)}</${name}>`
        const head = token.header.map((part) => cell(part, 'th')).join('')
        const rows = token.rows
          .map((row) => `<tr>${row.map((part) => cell(part, 'td')).join('')}</tr>`)
          .join('\n')
        return `<div class="scroll" tabindex="0" role="region" aria-label="Table"><table><thead><tr>${head}</tr></thead><tbody>${rows}</tbody></table></div>\n`
      },
    },
  })
  const html = marked.parse(markdown)
  return { html: typeof html === 'string' ? html : '', files }
}
