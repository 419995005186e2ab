/** The givens in force for a card on an article, and for one run of it: numbers with their sources, words beside. */
import type { CardRecord, GivenText, RunRecord } from '../format/types.ts'
import type { Given, Schema } from '../methods/method.ts'
import { parseStated } from '../quantity/quantity-text.ts'
import type { Quantity } from '../quantity/types.ts'
import { knownOf, setpointOf } from './stated.ts'
import type { Run } from './types.ts'

export type Inputs = {
  readonly numbers: Readonly<Record<string, Quantity>>
  readonly words: Readonly<Record<string, string>>
  /** What could not be had, in sentences (a source run that has no such measure). */
  readonly missing: readonly string[]
}

type Origin = { readonly given: GivenText; readonly source: string }

const originsOf = (card: CardRecord, article: string, run: RunRecord | null): ReadonlyMap<string, Origin> => {
  const origins = new Map<string, Origin>()
  const put = (givens: Readonly<Record<string, GivenText>>, prefix: string) => {
    for (const [name, given] of Object.entries(givens))
      origins.set(name, { given, source: `given:${prefix}/${name}` })
  }
  put(card.given, `card:${card.id}`)
  put(card.articles[article] ?? {}, `card:${card.id}@${article}`)
  if (run) put(run.given, `run:${run.id}`)
  return origins
}

const quantityOf = (
  field: Given | undefined,
  name: string,
  origin: Origin & { given: { form: 'quantity' } },
): Quantity => {
  const { stated } = origin.given
  return field?.role === 'setpoint' ? setpointOf(stated) : knownOf(name, stated, origin.source)
}

const isQuantity = (origin: Origin): origin is Origin & { given: Extract<GivenText, { form: 'quantity' }> } =>
  origin.given.form === 'quantity'

/** Results of other runs come with their sources, so that correlation stays right. */
const resultOf = (
  given: Extract<GivenText, { form: 'result' }>,
  runs: ReadonlyMap<string, Run>,
): Quantity | string => {
  const computed = runs.get(given.from)?.computed
  const quantity = computed?.measures[given.measure] ?? computed?.derived[given.measure]
  return quantity ?? `${given.from} gives no ${given.measure}`
}

const defaultsOf = (schema: Schema): [string, Origin][] =>
  schema.givens.flatMap((field) => {
    if (field.default === undefined) return []
    const stated = field.role === 'choice' || field.role === 'words' ? null : parseStated(field.default)
    const given: GivenText = stated?.ok
      ? {
          form: 'quantity',
          stated: { ...stated.value, exact: stated.value.exact || stated.value.u === null },
        }
      : { form: 'word', word: field.default }
    return [[field.name, { given, source: `given:default/${field.name}` }]]
  })

export const inputsOf = (
  schema: Schema,
  card: CardRecord,
  article: string,
  run: RunRecord | null,
  runs: ReadonlyMap<string, Run>,
): Inputs => {
  const numbers: Record<string, Quantity> = {}
  const words: Record<string, string> = {}
  const missing: string[] = []
  const fields = new Map(schema.givens.map((field) => [field.name, field]))
  for (const [name, origin] of [...defaultsOf(schema), ...originsOf(card, article, run)]) {
    const { given } = origin
    if (given.form === 'word') words[name] = given.word
    else if (isQuantity(origin)) numbers[name] = quantityOf(fields.get(name), name, origin)
    else if (given.form === 'result') {
      const result = resultOf(given, runs)
      if (typeof result === 'string') missing.push(result)
      else numbers[name] = result
    }
  }
  return { numbers, words, missing }
}
