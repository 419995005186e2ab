/** A test card: what is tested, how, with which instruments, against which criteria and why. */
import { z } from 'zod'
import { atMost, counting, keyed, named, quantity, range, rule, text, texts, unit } from '../fields/common.ts'
import { givens } from '../fields/given.ts'
import { fieldsOf } from '../fields/reader.ts'
import type { CardRecord, GivenText, RecordBase, Rule } from '../types.ts'

const demand = fieldsOf({
  range: range.optional(),
  uncertainty: atMost.optional(),
  resolution: atMost.optional(),
  drift: atMost.optional(),
})

const criterion = fieldsOf({ accept: text, rule: rule.optional(), show: unit.optional(), why: text })

export const cardFields = fieldsOf({
  title: text,
  method: text,
  owner: text,
  article: text.optional(),
  articles: keyed(givens).optional(),
  covers: texts.default([]),
  after: texts.default([]),
  'overtaken-by': texts.default([]),
  'runs-per-round': counting.default(1),
  'stop-at': named(quantity).default({}),
  instruments: named(demand).default({}),
  given: givens.default({}),
  ask: texts.default([]),
  every: quantity.optional(),
  targets: named(text).default({}),
  criteria: named(criterion).default({}),
  derive: named(text).default({}),
  show: named(unit).default({}),
  cautions: texts.default([]),
  uncertainty: z.enum(['first-order', 'monte-carlo']).default('first-order'),
})

export type CardFields = z.output<typeof cardFields>

/** The names of a card's own fields; whatever else stands in a card must be a field of its method. */
export const CARD_FIELD_NAMES: readonly string[] = Object.keys(cardFields.shape)

type Givens = Readonly<Record<string, GivenText>>

export function cardRecord(
  base: RecordBase,
  fields: CardFields,
  defaultRule: Rule,
  read: {
    readonly given: Givens
    readonly articles: Readonly<Record<string, Givens>>
    readonly fields: Readonly<Record<string, unknown>>
  },
): CardRecord {
  const { title, method, owner, covers, after, instruments, ask, every, targets, derive, show } = fields
  const criteria = Object.entries(fields.criteria).map(([id, { rule: own, ...criterion }]) => ({
    id,
    ...criterion,
    rule: own ?? defaultRule,
  }))
  return {
    ...base,
    ...{ kind: 'card', title, method, owner, covers, after, instruments, ask, every, targets, derive, show },
    ...read,
    criteria,
    overtakenBy: fields['overtaken-by'],
    runsPerRound: fields['runs-per-round'],
    stopAt: fields['stop-at'],
    cautions: fields.cautions,
    uncertainty: fields.uncertainty,
  }
}
