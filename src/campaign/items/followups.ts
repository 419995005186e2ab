/** Items that something earlier left behind: fitted parts, concessions, readiness records and their basis. */
import { parseStated } from '../../quantity/quantity-text.ts'
import { concessionInForce } from '../concession.ts'
import type { OpenItem } from '../types.ts'
import { type ItemContext, itemId, runItem } from './item.ts'

/** Fitted for a test, and no later record of any kind says that it was removed. */
const notRemoved = (context: ItemContext): OpenItem[] => {
  const { runs, reworks, items, readiness } = context.records
  const removed = new Set(
    [runs, reworks, items, readiness].flatMap((kind) =>
      Object.values(kind).flatMap((record) => record.removed),
    ),
  )
  return context.runs.flatMap((run) =>
    run.record.fitted
      .filter((fitted) => !removed.has(`${run.id}#${fitted.id}`))
      .map((fitted) => {
        const title = `${fitted.what}, fitted for ${run.id}, has not been removed`
        const closes = `a record that says removed: [${run.id}#${fitted.id}]`
        return runItem(
          context,
          run,
          { kind: 'not-removed', about: [run.id, run.article], title, closes, since: run.record.when.date },
          fitted.id,
        )
      }),
  )
}

const expiredConcessions = (context: ItemContext): OpenItem[] =>
  Object.values(context.records.items).flatMap((item) => {
    const { concession } = item
    if (!concession || item.closed) return []
    const run = context.runs.find((each) => each.id === concession.run)
    const signed = context.records.people[concession.agreed]?.roles.includes('concede') ?? false
    const newest = run?.overtakenBy === null
    if (concessionInForce(item, context.records.people, context.asOf, newest) || !run) return []
    const why = signed
      ? `has run out (until ${concession.until})`
      : `is not signed by a person who may concede`
    const title = `The concession ${item.id} ${why}`
    const closes = 'a new concession, a passing run, or closing it'
    return [
      runItem(
        context,
        run,
        { kind: 'concession-expired', about: [item.id, run.id], title, closes, since: item.raised.when.date },
        item.id,
      ),
    ]
  })

const conditions = (context: ItemContext): OpenItem[] =>
  Object.values(context.records.readiness).flatMap((record) =>
    record.conditions.flatMap((id) => {
      const item = context.records.items[id]
      if (record.decision !== 'go with conditions' || !item || item.closed) return []
      return [
        {
          id: itemId('condition', record.id, id),
          kind: 'condition' as const,
          title: `Condition of the readiness meeting on ${record.gate}: ${item.title}`,
          about: [record.id, id],
          gates: [record.gate],
          owner: item.owner ?? item.raised.by,
          since: record.when.date,
          closes: `closing ${id}`,
          due: item.due ?? null,
          raisedByHand: false,
        },
      ]
    }),
  )

/** Equal within the last digit that the minutes give. A text that is no quantity is not compared. */
const sameAsWritten = (text: string, value: number | undefined): boolean => {
  const stated = parseStated(text)
  if (!stated.ok || value === undefined) return true
  return Math.abs(stated.value.value - value) <= stated.value.digit
}

/** A verdict or value that comes out differently from what a readiness record was based on. */
const basis = (context: ItemContext): OpenItem[] =>
  Object.values(context.records.readiness).flatMap((record) =>
    record.basis.flatMap((line) => {
      const run = context.runs.find((each) => each.id === line.run)
      const now = run?.counting.find((judgement) => judgement.criterion === line.criterion)
      const verdict = run && run.verdict === null ? 'void' : now?.verdict
      const value = now?.terms[0]?.value.value
      if (verdict === line.verdict && sameAsWritten(line.value, value)) return []
      const was = verdict === line.verdict ? line.value : line.verdict
      const is = verdict === line.verdict ? 'another value' : (verdict ?? 'gone')
      return [
        {
          id: itemId('basis-differs', record.id, line.run, line.criterion),
          kind: 'basis-differs' as const,
          title: `${record.id} was based on ${line.criterion.replaceAll('_', ' ')} of ${line.run} being ${was}; it is now ${is}`,
          about: [record.id, line.run],
          gates: [record.gate],
          owner: run?.card.owner ?? '',
          since: record.when.date,
          closes: 'a new readiness meeting on this gate',
          due: null,
          raisedByHand: false,
        },
      ]
    }),
  )

export const followupItems = (context: ItemContext): OpenItem[] => [
  ...notRemoved(context),
  ...expiredConcessions(context),
  ...conditions(context),
  ...basis(context),
]
