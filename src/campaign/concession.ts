/** A concession: a signed decision to accept a result that does not meet its criterion. */
import type { ItemRecord, Person } from '../format/types.ts'

/** In force: signed by a person who may concede, not withdrawn, and not past its round or date. */
export const concessionInForce = (
  item: ItemRecord,
  people: Readonly<Record<string, Person>>,
  asOf: string,
  newestRound: boolean,
): boolean => {
  const { concession } = item
  if (!concession || item.closed) return false
  if (!people[concession.agreed]?.roles.includes('concede')) return false
  return concession.until === 'round' ? newestRound : asOf <= concession.until
}
