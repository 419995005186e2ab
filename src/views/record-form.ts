/** What a form needs to know of its card, from the campaign: fields from the method's schema, never a line for a method. */
import { worseThanAsked } from '../campaign/demand.ts'
import { type Bench, gaugeUnit, instrumentFor, plannedColumns } from '../campaign/plan/gauges.ts'
import { plannedSchema } from '../campaign/schema.ts'
import type { CardState, Run } from '../campaign/types.ts'
import type { FormColumn, FormGiven, FormInstrument, FormView } from '../form/view.ts'
import type { CardRecord, GivenText } from '../format/types.ts'
import type { ColumnField, Schema } from '../methods/method.ts'
import { sameDimension } from '../quantity/dimension.ts'
import { KINDS } from '../quantity/kinds.ts'
import { canRead } from './new-instruments.ts'
import { takenOver } from './new-results.ts'
import { tableUnit } from './new-run.ts'
import { stopText } from './planning.ts'
import type { Site } from './site.ts'
import { dateWords, nameWords } from './words.ts'

const givenWords = (given: GivenText): string => {
  if (given.form === 'quantity') return given.stated.text
  return given.form === 'word' ? given.word : `${nameWords(given.measure)} of ${given.from}`
}

/** Results that stand and that a run on one of the articles would take over; each once. */
const resultsFor = (
  name: string,
  states: readonly CardState[],
  runs: readonly Run[],
): FormGiven['results'] => {
  const found = states.flatMap((state) => {
    const result = takenOver(name, state, runs)
    const source = result?.from ? runs.find((run) => run.id === result.from) : undefined
    if (!result?.from || !source) return []
    const { measure } = result
    const label = `${nameWords(measure)} of ${source.card.title}, ${source.article}, ${dateWords(source.record.when.date)}`
    return [{ run: source.id, measure, label }]
  })
  return [...new Map(found.map((each) => [each.label, each])).values()]
}

const givensOf = (
  card: CardRecord,
  states: readonly CardState[],
  schema: Schema,
  site: Site,
): FormGiven[] => {
  const names = [
    ...new Set([
      ...card.ask,
      ...[card.given, ...Object.values(card.articles)].flatMap((givens) => Object.keys(givens)),
    ]),
  ]
  return names.map((name) => {
    const field = schema.givens.find((each) => each.name === name)
    const own = Object.entries(card.articles).flatMap(([article, givens]) => {
      const given = givens[name]
      return given ? [[article, givenWords(given)] as const] : []
    })
    const general = card.given[name]
    return {
      name,
      label: nameWords(name),
      meaning: field?.meaning ?? '',
      form: field?.role === 'choice' || field?.role === 'words' ? field.role : 'quantity',
      choices: field?.choices ?? [],
      card: Object.fromEntries([...(general ? [['*', givenWords(general)] as const] : []), ...own]),
      asked: card.ask.includes(name),
      results: resultsFor(name, states, site.campaign.runs),
    }
  })
}

/** Units to choose from: that of the gauge, those of instruments that can read it, and the clock for a time. */
const unitsOf = (field: ColumnField, bench: Bench, instruments: readonly FormInstrument[]): string[] => {
  const first = tableUnit(field, bench)
  if (field.kind === 'time') return [...new Set(['hh:mm:ss', first, 'min', 's', 'hh:mm'])]
  const read = instruments.filter((each) => each.columns[field.name]).map((each) => each.unit)
  return [...new Set([first, ...read])]
}

const columnOf = (
  field: ColumnField,
  bench: Bench,
  planned: ReadonlySet<string>,
  instruments: readonly FormInstrument[],
): FormColumn => {
  const stop = bench.card.stopAt[field.name]
  return {
    name: field.name,
    label: nameWords(field.name),
    meaning: field.meaning,
    form: field.kind === 'text' ? 'words' : field.kind === 'time' ? 'time' : 'number',
    units: unitsOf(field, bench, instruments),
    choices: field.choices ?? [],
    rows: field.rows ?? [],
    inside: field.from !== undefined,
    instrument: field.instrument,
    planned: planned.has(field.name),
    stop: stop ? { text: stopText(stop, gaugeUnit(bench, field)), value: stop.value } : null,
  }
}

const REMARK: FormColumn = {
  name: 'remark',
  label: 'remark',
  meaning: 'anything that was noticed at this reading',
  form: 'words',
  units: ['text'],
  choices: [],
  rows: [],
  inside: false,
  instrument: 'none',
  planned: true,
  stop: null,
}

const instrumentsOf = (card: CardRecord, fields: readonly ColumnField[], site: Site): FormInstrument[] =>
  Object.values(site.campaign.records.instruments).map((instrument) => {
    const read = fields.filter((field) => field.instrument !== 'none' && canRead(field, instrument))
    const complaints = (field: ColumnField) =>
      worseThanAsked(card.instruments[field.name], instrument, site.campaign.asOf)
    const { resolution, range } = instrument
    // A thermometer is read on its scale, though its resolution may be written in kelvins.
    const isThermometer = sameDimension(resolution.unit.dim, KINDS.temperature.dim)
    const unit = (isThermometer && range ? range.low : resolution).unit.text
    return {
      id: instrument.id,
      title: instrument.title,
      unit: unit.replaceAll(' ', '·'),
      periods: instrument.calibrations.map(({ on, due }) => ({ on, due })),
      columns: Object.fromEntries(read.map((field) => [field.name, complaints(field)])),
    }
  })

/** What was fitted in runs of this card and has not come out again by any record. */
const stillFitted = (card: CardRecord, site: Site): FormView['fitted'] => {
  const { records, runs } = site.campaign
  const all = [
    ...Object.values(records.runs),
    ...Object.values(records.reworks),
    ...Object.values(records.items),
  ]
  const out = new Set(all.flatMap((record) => record.removed))
  return runs
    .filter((run) => run.card.id === card.id)
    .flatMap((run) => run.record.fitted.map(({ id, what }) => ({ id: `${run.id}#${id}`, what })))
    .filter(({ id }) => !out.has(id))
}

/** Files of the runs that a result rests on, through all givens that are results. */
const sourceFiles = (givens: readonly FormGiven[], site: Site): string[] => {
  const found = new Map<string, Run>()
  const visit = (id: string): void => {
    const run = site.campaign.runs.find((each) => each.id === id)
    if (!run || found.has(id)) return
    found.set(id, run)
    for (const given of Object.values(run.record.given)) if (given.form === 'result') visit(given.from)
  }
  for (const given of givens) for (const { run } of given.results) visit(run)
  return [...found.values()].map((run) => run.record.source.path).sort()
}

/** Id and title of every card that serves an article. */
export const cardTitles = (site: Site): [string, string][] => {
  const served = new Set(site.campaign.cards.map((state) => state.id))
  return Object.values(site.campaign.records.cards)
    .filter((card) => served.has(card.id))
    .map((card) => [card.id, card.title])
}

export const formOf = (card: CardRecord, states: readonly CardState[], site: Site): FormView | null => {
  const [state] = states
  const { method } = state ?? {}
  if (!method) return null
  const { campaign } = site
  const { settings, people } = campaign.records
  const schema = plannedSchema(method, card)
  const bench: Bench = { records: campaign.records, runs: campaign.runs, card, day: campaign.asOf }
  const planned = new Set(plannedColumns(bench, schema).map((field) => field.name))
  const instruments = instrumentsOf(card, schema.columns, site)
  const columns = schema.columns.map((field) => columnOf(field, bench, planned, instruments))
  const before = columns.flatMap(({ name }) => {
    const instrument = instrumentFor(bench, name)
    return instrument ? [[name, instrument.id] as const] : []
  })
  const givens = givensOf(card, states, schema, site)
  return {
    card: card.id,
    title: card.title,
    articles: states.map((each) => each.article),
    people: Object.values(people).map(({ id, name, roles }) => ({ id, name, roles })),
    givens,
    columns: columns.some(({ name }) => name === 'remark') ? columns : [...columns, REMARK],
    before: Object.fromEntries(before),
    instruments,
    every: card.every?.value ?? null,
    forge: settings.forge ?? '',
    main: settings.main,
    mostBytes: settings.files.maxBytes,
    fitted: stillFitted(card, site),
    taken: campaign.runs.filter((run) => run.card.id === card.id).map((run) => run.id),
    cards: cardTitles(site),
    sources: sourceFiles(givens, site),
  }
}
