/** The handbook: methods, formulas, units, problems, and how to read these pages. */

import type { CheckValue } from '../methods/check-values.ts'
import type { StoredCoverage } from '../methods/coverage.ts'
import type { Method } from '../methods/method.ts'
import type { ProblemCode } from '../problems/types.ts'
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { formulasView } from './formulas.ts'
import { methodView } from './method.ts'
import { list, prose, section, strong, table, text, viewOf } from './page.ts'
import { problemsView } from './problems.ts'
import { proseOf } from './prose.ts'
import type { Site } from './site.ts'
import { unitsView } from './units.ts'
import type { Rich, View } from './view.ts'
import { stamp } from './words.ts'

export type MethodEntry = {
  readonly method: Method
  readonly handbook: string
  readonly checks: readonly CheckValue[]
  /** Null until `npm run coverage -- --write` has run. */
  readonly coverage: StoredCoverage | null
}

export type Handbook = {
  readonly methods: readonly MethodEntry[]
  readonly functions: readonly FormulaFunction[]
  readonly codes: readonly ProblemCode[]
}

export const EMPTY_HANDBOOK: Handbook = { methods: [], functions: [], codes: [] }

const STAMPS: readonly Rich[] = [
  [
    stamp('pass', 'pass'),
    ' single rule: the true value conforms with the probability that the rule asks for.',
  ],
  [stamp('fail', 'fail'), ' double rule: the true value is beyond a limit with that probability.'],
  [
    stamp('undetermined', 'undetermined'),
    ' dashed rule: neither can be said. An honest result; the page says what would settle it.',
  ],
  [stamp('due again', 'due-again'), ' struck through: it passed, and what it covers was changed since.'],
  [
    stamp('conceded', 'conceded'),
    ' dotted rule: it does not meet its criterion and was accepted by signature.',
  ],
  [stamp('not run', 'plain'), ' hairline: there is nothing to judge yet.'],
]

const READING = `Every result is shown as value ± U with its unit. U is the expanded uncertainty for 95 %: the standard uncertainty
times a factor from Student’s t for its effective degrees of freedom (JCGM 100). The factor stands under each budget.

A guarded rule accepts only where the probability that the true value conforms is at least what the rule says (JCGM 106). The
drawing in the row of each criterion shows the value, its interval and the limit; the hatched side is not accepted.

“Less than X” is the value plus its one-sided 95 % bound. “Uncertainty not known” is not zero: such a result cannot pass a guarded
criterion.`

export const handbookViews = (handbook: Handbook, site: Site): View[] => {
  const methods = handbook.methods.map(({ method }): Rich[] => [
    [{ is: 'link', text: method.title, to: `handbook/methods/${method.id}/` }],
    [method.question],
    [method.id],
  ])
  const index = viewOf(site, {
    path: 'handbook/',
    kind: 'handbook',
    title: 'How are results computed and judged?',
    description: 'Methods, formulas, units, problems, and how to read the pages.',
    blocks: [
      ...section(
        'methods',
        'Test methods',
        table('Methods', ['method', 'the question it answers', 'name on a card'], methods),
      ),
      ...section('reading', 'How to read a page', [...prose(proseOf(READING, '', site)), ...list(STAMPS)]),
      ...section('more', 'Look up', [
        text(
          { is: 'link', text: 'Formulas and functions', to: 'handbook/formulas/' },
          ': what may stand in a criterion, a target or a derived value.',
        ),
        text(
          { is: 'link', text: 'Units', to: 'handbook/units/' },
          ': what may be written, and what it is in SI.',
        ),
        text(
          { is: 'link', text: 'Problems', to: 'handbook/problems/' },
          ': every message of the check, with an example and the mend.',
        ),
      ]),
      text(
        strong('Who decides. '),
        'Regulations are quoted by issue on each page. The applicable local code and the responsible licensed person decide, not this software.',
      ),
    ],
  })
  return [
    index,
    ...handbook.methods.map((entry) => methodView(entry, site)),
    formulasView(handbook, site),
    unitsView(site),
    problemsView(handbook, site),
  ]
}
