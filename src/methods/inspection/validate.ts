/** An entry that the card does not know, one that stands twice, and answers that cannot be read. */
import { nearest } from '../../quantity/nearest.ts'
import type { Columns, Givens, Method } from '../method.ts'
import { readAnswer } from './answers.ts'
import { checklistOf } from './checklist.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => {
  const list = checklistOf(givens.fields)
  const names = list.map(({ name }) => name)
  const texts = columns.entry?.texts ?? []
  return texts.flatMap((name, row): Finding[] => {
    const entry = list.find((one) => one.name === name)
    if (!entry) {
      const [near] = nearest(name, names)
      const message = `the checklist of the card has no entry \`${name}\``
      const hint = near ? `\`${near}\` is close` : `its entries are ${names.join(', ')}`
      return [{ code: 'inspection/unknown-entry', column: 'entry', row, message, hint }]
    }
    const first = texts.indexOf(name)
    if (first < row) {
      const message = `\`${name}\` is answered twice, in rows ${first + 1} and ${row + 1}`
      const hint = 'keep one row; what was found and what was left have columns of their own'
      return [{ code: 'inspection/twice', column: 'entry', row, message, hint }]
    }
    // The same mistake in both cells of a row is one mistake.
    for (const column of ['as_left', 'as_found'] as const) {
      const answer = readAnswer(columns[column]?.texts?.[row], columns.unit?.texts?.[row], entry)
      if (answer.form === 'wrong')
        return [{ code: 'inspection/answer', column, row, message: answer.why, hint: answer.hint }]
    }
    return []
  })
}
