/** What a record says of itself, where git is not asked. */
import type { RunRecord } from '../../format/types.ts'
import type { Amendment, Provenance } from './types.ts'

export const amendmentsOf = (record: RunRecord): Amendment[] =>
  record.amendments.map(({ when, ...rest }) => ({ when: when.text, ...rest }))

export const unknownProvenance = (record: RunRecord): Provenance => ({
  recorded: null,
  landed: null,
  reviewed: [],
  notCounted: [],
  signature: null,
  amended: amendmentsOf(record),
  voidedSince: false,
  changes: null,
  changedOn: null,
  commits: null,
  state: 'unknown',
})
