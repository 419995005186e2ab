/** A quantity against what it is for: unit, dimension, meaning, range. */
import { makeProblem } from '../../problems/make.ts'
import type { Place, Problem } from '../../problems/types.ts'
import { describeDimension } from '../../quantity/dimension.ts'
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import type { Stated, Unit } from '../../quantity/types.ts'
import { meantInstead } from '../../quantity/unit-hints.ts'
import { misfit, namesOf, unitsFor } from '../kind-units.ts'

/** What is asked for: the words of the message, and the kinds that would do. */
export type Wanted = {
  /** As it stands in the file, in backticks where it is a name: `` `volume` ``. */
  readonly name: string
  readonly kinds: readonly Kind[]
  readonly meaning?: string
  readonly range?: { readonly low?: number; readonly high?: number }
  readonly see?: string
}

/** The problem of a stated quantity, if it has one; `at` finds where its text stands. */
export function quantityProblem(stated: Stated, wanted: Wanted, at: () => Place): Problem | undefined {
  const [unit] = unitsFor(wanted.kinds)
  const example =
    stated.unit.text === '1' ? `${stated.text} ${unit}` : stated.text.replace(stated.unit.text, unit ?? '')
  return unitProblem(stated.unit, wanted, at, example) ?? rangeProblem(stated.value, stated.text, wanted, at)
}

/** The problem of a unit where a quantity of some kind is written. */
export function unitProblem(
  unit: Unit,
  wanted: Wanted,
  at: () => Place,
  example?: string,
): Problem | undefined {
  const how = misfit(unit, wanted.kinds)
  if (how === undefined) return undefined
  const names = namesOf(wanted.kinds)
  const units = unitsFor(wanted.kinds)
  const see = wanted.see === undefined ? undefined : [wanted.see]
  const give = `give ${list(units)}${example ? `, as in \`${example}\`` : ''}`
  if (how === 'missing') {
    const message = `${wanted.name} has no unit`
    return makeProblem({
      code: 'unit/missing',
      message,
      at: at(),
      expected: units,
      why: `${article(names)} is asked for`,
      hint: give,
      see,
    })
  }
  if (how === 'meaning') {
    const message = `${wanted.name} is ${article(names)}, and \`${unit.text}\` is the unit of ${article(other(unit))}`
    const why = `${other(unit)} and ${names} have the same dimension but not the same meaning`
    return makeProblem({
      code: 'unit/meaning',
      message,
      at: at(),
      actual: unit.text,
      expected: units,
      why,
      hint: give,
      see,
    })
  }
  const is = describeDimension(unit.dim)
  const message = `${wanted.name} is given as ${article(is)}`
  const what = wanted.meaning
    ? `${wanted.name} is ${lowered(wanted.meaning)}`
    : `${article(names)} is asked for`
  const why = `${what}; ${article(is)} cannot stand for ${article(names)}`
  const meant = wanted.kinds
    .map((kind) => meantInstead(unit, KINDS[kind].dim))
    .find((hint) => hint !== undefined)
  return makeProblem({
    code: 'unit/wrong-dimension',
    message,
    at: at(),
    actual: unit.text,
    why,
    hint: meant ?? give,
    see,
  })
}

/** A value outside the range in which the method is valid; `value` in SI. */
export function rangeProblem(
  value: number,
  written: string,
  wanted: Wanted,
  at: () => Place,
): Problem | undefined {
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = wanted.range ?? {}
  if (!(value < low || value > high)) return undefined
  const unit = wanted.kinds[0] ? KINDS[wanted.kinds[0]].unit : ''
  const limit = value < low ? `at least ${low}` : `at most ${high}`
  const message = `${wanted.name} is ${written}, which is outside the range of the method`
  const hint = `it must be ${limit}${unit === '1' ? '' : ` ${unit}`}`
  return makeProblem({ code: 'value/out-of-range', message, at: at(), actual: written, hint })
}

function other(unit: Unit): string {
  if (unit.energy) return 'energy'
  if (unit.offset !== 0) return 'temperature'
  return /delta/.test(unit.text) ? 'temperature difference' : 'moment'
}

export const article = (noun: string) => (/^[aeiou]/.test(noun) ? `an ${noun}` : `a ${noun}`)

const lowered = (sentence: string) =>
  /^[A-Z][a-z]/.test(sentence) ? sentence.charAt(0).toLowerCase() + sentence.slice(1) : sentence

const list = (words: readonly string[]) =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
