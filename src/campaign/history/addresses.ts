/**
 * Addresses of what a run holds, as amendments name it in `at`:
 *
 *     witness                                 a field
 *     given volume                            a field within a field, names separated by blanks
 *     deviations 2 why                        an entry of a list by its number, from 1; by its `id` where it has one
 *     readings row 30 column pressure         a cell; rows count from 1, below the line of units
 *     readings row 30                         a whole row, taken out (by its old number) or added (by its new one)
 *     readings column pressure                a whole column
 *     readings unit of pressure               the unit of a column
 *
 * Letter case and the number of blanks do not matter. `was` is the old text; of something added, `nothing`.
 */

/** What stands for something that is not there. */
export const NOTHING = 'nothing'

export const joinAddress = (...parts: readonly (string | number)[]): string => parts.join(' ')

/** One text for all spellings of an address or a value. */
export const sameText = (text: string): string => text.replace(/\s+/g, ' ').trim()

export const normalAddress = (at: string): string =>
  sameText(at.replaceAll('/', ' ').replaceAll(',', ' ')).toLowerCase()
