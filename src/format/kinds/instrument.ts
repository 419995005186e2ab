/** An instrument with its calibrations: accuracies become standard uncertainties in SI. */
import { z } from 'zod'
import { day, quantity, range, text } from '../fields/common.ts'
import { fieldsOf } from '../fields/reader.ts'

const calibration = fieldsOf({
  on: day,
  due: day,
  by: text,
  certificate: text,
  uncertainty: text.optional(),
  corrections: z.string().optional(),
  'found-out': text.optional(),
})

export const instrumentFields = fieldsOf({
  title: text,
  kind: text,
  serial: text,
  range: range.optional(),
  resolution: quantity,
  accuracy: text.optional(),
  distribution: z.enum(['rectangular', 'normal']).optional(),
  linearity: text.optional(),
  hysteresis: text.optional(),
  drift: text.optional(),
  liquid: text.optional(),
  density: quantity.optional(),
  calibrations: z.array(calibration).default([]),
})

export type InstrumentFields = z.output<typeof instrumentFields>
export type CalibrationFields = z.output<typeof calibration>
