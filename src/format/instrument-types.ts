/** What an instrument's file says, typed. */
import type { Stated } from '../quantity/types.ts'
import type { RecordBase } from './types.ts'

/** An accuracy statement as standard uncertainties: gain relative, offset in SI. */
export type Accuracy = {
  readonly text: string
  readonly gain: number
  readonly offset: number
  readonly shape: 'normal' | 'rectangular'
}

export type Calibration = {
  /** `YYYY-MM-DD` */
  readonly on: string
  readonly due: string
  readonly by: string
  readonly certificate: string
  /** Standard uncertainty in SI. */
  readonly uncertainty?: number
  /** Reading and what to add to it, in SI, sorted by reading as written. */
  readonly corrections: readonly { readonly reading: number; readonly add: number }[]
  /** The instrument was found wrong here. */
  readonly foundOut?: string
}

export type InstrumentRecord = RecordBase & {
  readonly kind: 'instrument'
  readonly title: string
  readonly instrumentKind: string
  readonly serial: string
  readonly range?: { readonly low: Stated; readonly high: Stated }
  readonly resolution: Stated
  /** Absent: not known. Each is a standard uncertainty in SI; drift per second. */
  readonly accuracy?: Accuracy
  readonly linearity?: number
  readonly hysteresis?: number
  readonly drift?: number
  readonly liquid?: string
  readonly density?: Stated
  readonly calibrations: readonly Calibration[]
}
