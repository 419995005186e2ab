/** The lines around a place, with a marker under the smallest span that shows the fault. */
import type { Place } from '../types.ts'

const AROUND = 2
const WIDTH = 110

/**
 * Up to two lines before and after, as in
 *
 *         6 | card: tank-leak
 *       > 7 | given: {volume: 96.4 ± 0.6 kg}
 *           |                 ^^^^^^^^^^^^^
 *
 * A tab is shown as `→` and a control character as `�`, each one column wide, so that the marker stays in its place.
 */
export function excerpt(at: Place, text: string): string[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/)
  const marked = lines[at.line - 1]
  if (marked === undefined) return []
  const first = Math.max(1, at.line - AROUND)
  const last = Math.min(lines.length, at.line + AROUND)
  const digits = String(last).length
  const left = Math.max(0, Math.min(at.column - 20, marked.length - WIDTH))
  const cut = marked.length > WIDTH ? left : 0
  const shown: string[] = []
  for (let line = first; line <= last; line++) {
    const raw = lines[line - 1] ?? ''
    if (line === lines.length && raw === '' && line !== at.line) continue
    const mark = line === at.line ? '>' : ' '
    shown.push(`  ${mark} ${String(line).padStart(digits)} | ${visible(clip(raw, cut))}`.trimEnd())
    if (line !== at.line) continue
    const end = at.endLine === at.line ? at.endColumn : marked.trimEnd().length + 1
    const width = Math.max(1, Math.min(end - at.column, cut + WIDTH - at.column + 1))
    const shift = at.column - 1 - cut
    shown.push(`    ${' '.repeat(digits)} | ${' '.repeat(shift)}${'^'.repeat(width)}`)
  }
  return shown
}

function clip(line: string, cut: number): string {
  const part = line.slice(cut, cut + WIDTH)
  const start = cut > 0 && part !== '' ? `…${part.slice(1)}` : part
  return line.length > cut + WIDTH ? `${start.slice(0, -1)}…` : start
}

const visible = (line: string) => line.replaceAll('\t', '→').replace(/\p{Cc}/gu, '�')
