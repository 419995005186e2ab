/** What an instrument file says about accuracy, as standard uncertainties in SI. */
import { describeDimension, divideDimension, sameDimension } from '../../quantity/dimension.ts'
import { refuse } from '../../quantity/faults.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { parseStated } from '../../quantity/quantity-text.ts'
import { parseAccuracy } from '../../quantity/range-text.ts'
import type { Dimension, Result } from '../../quantity/types.ts'
import type { FieldFault } from '../fields/reader.ts'
import type { Accuracy, FieldPath, InstrumentRecord, RecordBase } from '../types.ts'
import { readCorrections } from './corrections.ts'
import type { CalibrationFields, InstrumentFields } from './instrument.ts'

export type InstrumentFault = FieldFault & { readonly path: FieldPath }

/** The record, or everything that is wrong in it. Linearity, hysteresis and drift are half-widths like accuracy. */
export function instrumentRecord(
  base: RecordBase,
  fields: InstrumentFields,
): Result<InstrumentRecord, readonly InstrumentFault[]> {
  const { title, kind, serial, range, resolution, liquid, density } = fields
  const dim = resolution.unit.dim
  const span = range ? range.high.value - range.low.value : null
  const faults: InstrumentFault[] = []
  const collect = <T>(path: FieldPath, result: Result<T>): T | undefined => {
    if (result.ok) return result.value
    faults.push(...result.error.map((fault) => ({ ...fault, path })))
    return undefined
  }
  const limits = (name: 'linearity' | 'hysteresis' | 'drift', of: Dimension) => {
    const text = fields[name]?.trim()
    return text === undefined ? undefined : collect([name], halfWidth(text, span, of))?.offset
  }
  if (range && !sameDimension(range.low.unit.dim, dim)) {
    const [a, b] = [describeDimension(range.low.unit.dim), describeDimension(dim)]
    const message = `the range is a ${a}, the resolution a ${b}`
    faults.push({
      code: 'unit/wrong-dimension',
      message,
      start: 0,
      end: range.low.text.length,
      path: ['range'],
    })
  }
  if (!(resolution.value > 0)) {
    const message = 'a resolution is greater than 0'
    faults.push({
      code: 'field/number',
      message,
      start: 0,
      end: resolution.text.length,
      path: ['resolution'],
    })
  }
  const accuracy =
    fields.accuracy === undefined
      ? undefined
      : collect(['accuracy'], parseAccuracy(fields.accuracy, span, dim))
  const calibrations = fields.calibrations.map((calibration, index) => ({
    ...plainCalibration(calibration),
    uncertainty:
      calibration.uncertainty === undefined
        ? undefined
        : collect(['calibrations', index, 'uncertainty'], certified(calibration.uncertainty, dim)),
    corrections: corrected(calibration, index, dim, faults),
  }))
  const linearity = limits('linearity', dim)
  const hysteresis = limits('hysteresis', dim)
  const drift = limits('drift', divideDimension(dim, KINDS.time.dim))
  if (faults.length > 0) return { ok: false, error: faults }
  return {
    ok: true,
    value: {
      ...base,
      ...{ kind: 'instrument', title, instrumentKind: kind, serial, range, resolution, liquid, density },
      ...{ linearity, hysteresis, drift, calibrations },
      accuracy: accuracy && distributed(accuracy, fields.distribution),
    },
  }
}

function halfWidth(text: string, span: number | null, dim: Dimension): ReturnType<typeof parseAccuracy> {
  const read = parseAccuracy(text, span, dim)
  if (!read.ok || read.value.gain === 0) return read
  const hint = 'give it in the unit of the reading, or in per cent of span'
  return refuse('quantity/accuracy', 'a share of the reading has no meaning here', 0, text.length, { hint })
}

/** A maker's ± that the file says to be normal is taken for 95 %, k = 2, instead of the half-width of a rectangle. */
function distributed(accuracy: Accuracy, distribution: 'rectangular' | 'normal' | undefined): Accuracy {
  if (distribution !== 'normal' || accuracy.shape === 'normal') return accuracy
  const share = Math.sqrt(3) / 2
  return { ...accuracy, gain: accuracy.gain * share, offset: accuracy.offset * share, shape: 'normal' }
}

/**
 * The uncertainty of a certificate: `± 1.5 Pa` or `1.5 Pa` is expanded, k = 2, as certificates state it (common
 * practice, no source); `(k=3)` and `(u)` say otherwise.
 */
function certified(text: string, dim: Dimension): Result<number> {
  const written = text.trim()
  const lead = /^(?:±|\+\/-)/.test(written) || /\(u\)\s*$/.test(written) ? '' : '± '
  const prefix = /\(u\)\s*$/.test(written) && lead === '' && !/^(?:±|\+\/-)/.test(written) ? '' : `0 ${lead}`
  const read = parseStated(`${prefix}${written}`)
  if (!read.ok) {
    const back = (offset: number) => Math.max(0, offset - prefix.length)
    return {
      ok: false,
      error: read.error.map((fault) => ({ ...fault, start: back(fault.start), end: back(fault.end) })),
    }
  }
  const { unit, u, value, isUncertainty } = read.value
  if (!sameDimension(unit.dim, dim)) {
    const message = `the uncertainty is a ${describeDimension(unit.dim)}, the reading a ${describeDimension(dim)}`
    return refuse('unit/wrong-dimension', message, 0, written.length)
  }
  return { ok: true, value: isUncertainty ? value : (u ?? 0) }
}

function plainCalibration({ on, due, by, certificate, 'found-out': foundOut }: CalibrationFields) {
  return { on, due, by, certificate, foundOut }
}

function corrected(calibration: CalibrationFields, index: number, dim: Dimension, faults: InstrumentFault[]) {
  if (calibration.corrections === undefined) return []
  const read = readCorrections(calibration.corrections, dim)
  if (read.ok) return read.value
  faults.push(...read.error.map((fault) => ({ ...fault, path: ['calibrations', index, 'corrections'] })))
  return []
}
