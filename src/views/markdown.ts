/** Texts of records inside Markdown that a forge renders: shown as they are, never acted upon. */

/** After these a forge would make a mention, a reference or a link. */
const BREAK = '\u200b'

const LONGEST = 300

const plain = (text: string): string => {
  // What is not seen may turn the reading direction, or hide a part.
  const seen = text
    .replace(/\s+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}]/gu, '')
    .trim()
  return [...seen].length > LONGEST ? `${[...seen].slice(0, LONGEST).join('')} …` : seen
}

/** For a paragraph, a point of a list, or a cell of a table. */
export const markdownText = (text: string): string =>
  plain(text)
    .replace(/[\\`*_[\]|~$]/g, '\\$&')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('@', `@${BREAK}`)
    .replace(/#(?=\d)/g, `#${BREAK}`)
    .replace(/\bGH-(?=\d)/gi, `GH${BREAK}-`)
    .replaceAll('://', `:${BREAK}//`)
    .replace(/\bwww\./gi, `www${BREAK}.`)
    // At the head of a point of a list these would begin another list or a title.
    .replace(/^(?=[-+#]+(?:\s|$))/, '\\')
    .replace(/^(\d+)(?=[.)](?:\s|$))/, '$1\\')

/** A formula or a path, as it is written. */
export const markdownCode = (text: string): string => {
  const safe = plain(text).replaceAll('`', '’').replaceAll('|', '∣')
  return safe === '' ? '' : `\`${safe}\``
}

export const tableRow = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`

export const tableHead = (names: readonly string[]): readonly string[] => [
  tableRow(names),
  tableRow(names.map(() => '---')),
]

export type Section = {
  readonly title: string
  /** Stands before the rows: the head of a table, a sentence. */
  readonly head: readonly string[]
  /** Each on lines of its own; as many as there is room for. */
  readonly rows: readonly string[]
  /** What a row is, to say how many were left out. */
  readonly of: string
}

const bytes = (text: string): number => new TextEncoder().encode(text).length

/** Room for each, so that what is short stands whole and a long one cannot push out the others. */
const share = (sizes: readonly number[], room: number): number[] => {
  const shares = sizes.map(() => 0)
  const rising = sizes.map((size, index) => ({ size, index })).sort((a, b) => a.size - b.size)
  let left = room
  for (const [done, { size, index }] of rising.entries()) {
    const given = Math.min(size, Math.floor(left / (rising.length - done)))
    shares[index] = given
    left -= given
  }
  return shares
}

const headLines = ({ title, head }: Section): string[] => [`### ${title}`, '', ...head]

const sized = (lines: readonly string[]): number => bytes(`${lines.join('\n')}\n`)

/** How long the sentence about what was cut can become. */
const CUT = 120

const sectionText = (section: Section, room: number): string => {
  const head = headLines(section)
  const whole = [...head, ...section.rows]
  if (sized(whole) + 1 <= room) return `${whole.join('\n')}\n`
  let left = room - sized(head) - CUT
  const kept = section.rows.filter((row) => {
    left = left < 0 ? left : left - sized([row])
    return left >= 0
  })
  const cut = `*${section.rows.length - kept.length} more ${section.of} are not shown here: no room.*`
  return `${[...head, ...kept, '', cut].join('\n')}\n`
}

/** All sections in not more than `most` bytes; what was cut is said. */
export const boundedText = (intro: readonly string[], sections: readonly Section[], most: number): string => {
  const first = `${intro.join('\n')}\n`
  const filled = sections.filter(({ rows }) => rows.length > 0)
  const sizes = filled.map((section) => sized([...headLines(section), ...section.rows]) + 1)
  const rooms = share(sizes, most - bytes(first) - filled.length)
  const texts = filled.map((section, index) => sectionText(section, rooms[index] ?? 0))
  return [first, ...texts].join('\n')
}
