/** Items about how a run was done: roles, deviations, order of tests, results that it rests on. */
import { touches } from '../parts.ts'
import type { OpenItem, Run } from '../types.ts'
import { type ItemContext, runItem, stillCounts } from './item.ts'

const twoRoles = (context: ItemContext, run: Run): OpenItem[] => {
  const { by, witness } = run.record
  const { reviewed } = run.provenance
  if (!witness) return []
  const since = run.record.when.date
  const twice = (role: string, closes: string): OpenItem[] => {
    const title = `${witness} is both ${role} and witness of ${run.id}`
    return [runItem(context, run, { kind: 'two-roles', about: [run.id], title, closes, since })]
  }
  if (by.includes(witness)) return twice('tester', 'a run with a second person as witness')
  const onlyReviewer = reviewed.length > 0 && reviewed.every((review) => review.by === witness)
  return onlyReviewer ? twice('reviewer', 'a review by somebody else') : []
}

const deviations = (context: ItemContext, run: Run): OpenItem[] => {
  const open = run.record.deviations.filter((deviation) => !deviation.agreed)
  const agreed = run.record.deviations.some((deviation) => deviation.agreed)
  const given = (name: string) => run.card.given[name] ?? run.card.articles[run.article]?.[name]
  const changed = Object.keys(run.record.given).filter((name) => given(name) && !run.card.ask.includes(name))
  const since = run.record.when.date
  const closes = 'somebody who owns the card agrees, and the run says who'
  return [
    ...open.map((deviation, index) => {
      const title = `${run.id} deviates from ${deviation.from} and nobody has agreed: ${deviation.what}`
      return runItem(
        context,
        run,
        { kind: 'deviation', about: [run.id], title, closes, since },
        String(index + 1),
      )
    }),
    ...(agreed ? [] : changed).map((name) => {
      const title = `${run.id} changes the card's ${name}, which the card does not ask for on the day`
      return runItem(context, run, { kind: 'deviation', about: [run.id], title, closes, since }, name)
    }),
  ]
}

/** Had the prerequisite passed, and was that pass still good, when this ran? */
const passedBefore = (context: ItemContext, card: string, run: Run): boolean =>
  context.runs.some((other) => {
    if (other.card.id !== card || other.verdict !== 'pass') return false
    const here =
      touches(other.article, run.article) ||
      !context.cards.some((state) => state.id === card && touches(state.article, run.article))
    const { overtakenBy } = other
    const overtaken = overtakenBy !== null && Date.parse(overtakenBy.when) <= run.record.when.epoch
    return here && other.record.when.epoch < run.record.when.epoch && !overtaken
  })

const prerequisites = (context: ItemContext, run: Run): OpenItem[] =>
  run.card.after
    .filter((card) => !passedBefore(context, card, run))
    .map((card) => {
      const title = `${card} had not passed when ${run.id} was made`
      const closes = `a run after ${card} has passed`
      return runItem(
        context,
        run,
        { kind: 'prerequisite', about: [run.id, card], title, closes, since: run.record.when.date },
        card,
      )
    })

/** A result that came from another run has a newer round, or that run no longer counts. */
const sources = (context: ItemContext, run: Run): OpenItem[] =>
  Object.values(run.record.given).flatMap((given) => {
    if (given.form !== 'result') return []
    const source = context.runs.find((other) => other.id === given.from)
    if (!source || (source.overtakenBy === null && source.verdict !== null)) return []
    const why = source.verdict === null ? 'is void' : `was overtaken by ${source.overtakenBy?.what}`
    const title = `${run.id} rests on ${given.measure} of ${source.id}, which ${why}`
    const closes = 'the run repeated with the newer result'
    return [
      runItem(
        context,
        run,
        { kind: 'source-newer', about: [run.id, source.id], title, closes, since: run.record.when.date },
        given.measure,
      ),
    ]
  })

const openEntries = (context: ItemContext, run: Run): OpenItem[] => {
  const { computed } = run
  const entries = computed?.method.openItems?.(computed.measures, computed.columns, computed.givens) ?? []
  return entries.map((entry) =>
    runItem(
      context,
      run,
      {
        kind: 'inspection-open',
        about: [run.id, run.article],
        title: entry.title,
        closes: entry.closes,
        since: run.record.when.date,
      },
      entry.id,
    ),
  )
}

/** Of several inspections in a round the newest says what is still open. */
const newestOfRound = (context: ItemContext, run: Run): boolean =>
  !context.runs.some(
    (other) =>
      other.card.id === run.card.id &&
      other.article === run.article &&
      other.round === run.round &&
      other.verdict !== null &&
      other.record.when.epoch > run.record.when.epoch,
  )

export const conductItems = (context: ItemContext): OpenItem[] =>
  context.runs
    .filter(stillCounts)
    .flatMap((run) => [
      ...twoRoles(context, run),
      ...deviations(context, run),
      ...prerequisites(context, run),
      ...sources(context, run),
      ...(newestOfRound(context, run) ? openEntries(context, run) : []),
    ])
