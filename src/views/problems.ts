/** What the check found in these records, and every message it can give with an example and the mend. */
import type { Handbook } from './handbook.ts'
import { code, list, prose, section, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'

/** Anchor of a code on this page; a code is `<area>/<name>`. */
export const codeAnchor = (problemCode: string): string => problemCode.replaceAll('/', '-')

const foundRows = (site: Site): Rich[][] =>
  site.campaign.problems.map((problem) => [
    [problem.severity],
    [code(problem.at.file), `:${problem.at.line}:${problem.at.column}`],
    [problem.message],
    [problem.hint ?? ''].filter((each) => each !== ''),
    [{ is: 'link', text: problem.code, to: `#${codeAnchor(problem.code)}` }],
  ])

export const problemsView = (handbook: Handbook, site: Site): View => {
  const known = new Set(handbook.codes.map((entry) => entry.code))
  const found = foundRows(site).map((row, index) => {
    const problem = site.campaign.problems[index]
    return problem && !known.has(problem.code) ? [...row.slice(0, 4), [problem.code]] : row
  })
  const areas = [...new Set(handbook.codes.map((entry) => entry.code.split('/')[0] ?? ''))].sort()
  const codes = areas.flatMap((area) =>
    section(
      `area-${area}`,
      `${area[0]?.toUpperCase()}${area.slice(1)}`,
      handbook.codes
        .filter((entry) => entry.code.startsWith(`${area}/`))
        .flatMap((entry): Block[] =>
          section(codeAnchor(entry.code), `${entry.code}: ${entry.title}`, [
            ...prose(proseOf(entry.page, '', site, 3)),
            ...(entry.example.data === undefined
              ? []
              : [{ is: 'sample' as const, label: 'With this data file', text: entry.example.data }]),
            { is: 'sample', label: `Gives the ${entry.severity}`, text: entry.example.wrong },
            { is: 'sample', label: 'Mended', text: entry.example.right },
          ]),
        ),
    ),
  )
  const blocks: Block[] = [
    ...section(
      'found',
      'In these records',
      found.length > 0
        ? table('Problems found', ['severity', 'place', 'what is wrong', 'what to do', 'code'], found)
        : [text('The check finds nothing wrong.')],
    ),
    ...section(
      'codes',
      'All messages',
      list(areas.map((area): Rich => [{ is: 'link', text: area, to: `#area-${area}` }])),
    ),
    ...codes,
  ]
  return viewOf(site, {
    path: 'handbook/problems/',
    kind: 'problems',
    title: 'What does this message mean?',
    description: 'Every problem that the check can find, with an example and the mend.',
    blocks,
  })
}
