/** The measures that a card declares: `flow: slope(volume, time)`, or with its meaning beside it. */
import type { Plain } from '../../format/types.ts'
import { BUILTINS, CONSTANTS, parseFormula } from '../../quantity/formula/index.ts'
import type { Node } from '../../quantity/formula/types.ts'
import type { Fault, Result } from '../../quantity/types.ts'
import { isUnitName } from '../../quantity/unit-names.ts'
import { AGGREGATES } from './aggregates.ts'
import { isMap, isName, isYesNo, type PathFault } from './plain.ts'

export type DeclaredMeasure = {
  readonly name: string
  readonly formula: string
  readonly node: Node
  readonly meaning: string
  /** Below −U it bars a pass. */
  readonly positive: boolean
  /** Where the formula stands, below `measures`. */
  readonly path: readonly string[]
}

const FIELDS = ['formula', 'meaning', 'positive']

const fault = (path: readonly string[], message: string, more: Partial<Fault> = {}): PathFault => ({
  code: 'tabulated/measures',
  message,
  start: 0,
  end: 1,
  path,
  ...more,
})

const nameFault = (name: string): PathFault | undefined => {
  const hint = 'give the measure another name'
  if (!isName(name)) {
    const rule = 'lower case letters, digits and _, as in `oil_pressure_hot`'
    return fault([name], `\`${name}\` cannot be the name of a measure`, { hint: rule })
  }
  if (isUnitName(name)) return fault([name], `\`${name}\` is the name of a unit`, { hint })
  if (Object.hasOwn(BUILTINS, name) || Object.hasOwn(CONSTANTS, name) || Object.hasOwn(AGGREGATES, name))
    return fault([name], `\`${name}\` has a meaning in formulas already`, { hint })
  return undefined
}

const readMeasure = (name: string, raw: Plain): Result<DeclaredMeasure, PathFault[]> => {
  const misnamed = nameFault(name)
  const short = typeof raw === 'string'
  const formula = short ? raw : isMap(raw) ? raw.formula : undefined
  if (typeof formula !== 'string' || (!short && !isMap(raw))) {
    const hint = `\`${name}: mean(…)\`, or \`${name}: {formula: mean(…), meaning: …}\``
    return { ok: false, error: [fault([name], `the measure \`${name}\` has no formula`, { hint })] }
  }
  const path = short ? [name] : [name, 'formula']
  const faults = misnamed ? [misnamed] : []
  const { meaning = 'of the card', positive = 'no' } = isMap(raw) ? raw : {}
  if (isMap(raw)) {
    for (const key of Object.keys(raw).filter((each) => !FIELDS.includes(each)))
      faults.push(fault([name, key], `a measure has no \`${key}\``, { end: key.length, expected: FIELDS }))
  }
  if (!isYesNo(positive))
    faults.push(fault([name, 'positive'], '`positive` is yes or no', { expected: ['yes', 'no'] }))
  if (typeof meaning !== 'string') faults.push(fault([name, 'meaning'], '`meaning` is one sentence'))
  const node = parseFormula(formula)
  if (!node.ok) faults.push(...node.error.map((each) => ({ ...each, path })))
  else if (node.value.type === 'compare' || node.value.type === 'and') {
    const hint = 'compare it in `criteria`'
    faults.push(
      fault(path, `the measure \`${name}\` compares instead of giving a value`, {
        end: formula.length,
        hint,
      }),
    )
  }
  if (faults.length > 0 || !node.ok || typeof meaning !== 'string') return { ok: false, error: faults }
  return { ok: true, value: { name, formula, node: node.value, meaning, positive: positive === 'yes', path } }
}

export const readMeasures = (raw: Plain): Result<readonly DeclaredMeasure[], PathFault[]> => {
  if (!isMap(raw) || Object.keys(raw).length === 0) {
    const hint = '{flow: slope(volume, time), warmest: max(oil_temperature)}'
    return { ok: false, error: [fault([], '`measures` says what is computed from the columns', { hint })] }
  }
  const measures = Object.entries(raw).map(([name, measure]) => readMeasure(name, measure))
  const faults = measures.flatMap((measure) => (measure.ok ? [] : measure.error))
  if (faults.length > 0) return { ok: false, error: faults }
  return { ok: true, value: measures.flatMap((measure) => (measure.ok ? [measure.value] : [])) }
}
