/**
 * Expected readings of a fuel flow that is known: planning, simulation.
 *
 * Truth (SI): `flow` as a volume per time (1.2 times the required flow), `fall` of it from beginning to end as a part
 * (0), `lasts` (the hold, else 60 s), `readings` (7), `noise` of a reading (half a digit), `first_head` and `last_head`
 * (only with one of them a head is read), `first_sign` (a time; a row is marked from there on, and the flow halves).
 * What is collected is a mass where an instrument is named for `mass`, else a volume.
 */
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import { normal, random } from '../../quantity/random.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Columns, Givens, Instruments } from '../method.ts'
import { factorOf } from './estimate.ts'
import { isKind } from './schema.ts'

export const rehearse = (
  givens: Givens,
  truth: Readonly<Record<string, number>>,
  instruments: Instruments,
  seed: number,
): Columns => {
  const { numbers } = givens
  const density = numbers.density ?? 720
  const perVolume = isKind(givens.dims?.required, 'mass-flow') ? density : 1
  const flow = truth.flow ?? (1.2 * factorOf(givens) * (numbers.required ?? 1e-5)) / perVolume
  const lasts = truth.lasts ?? numbers.hold ?? 60
  const count = Math.max(2, truth.readings ?? 7)
  const fall = truth.fall ?? 0
  const sign = truth.first_sign ?? Number.POSITIVE_INFINITY
  const rows = Array.from({ length: count }, (_, row) => row)
  const time = rows.map((row) => (lasts * row) / (count - 1))
  // Whoever starts and stops the watch is off by this much over the whole time.
  const stretch = 1 + ((numbers.time_error ?? 0) * normal(random(77_003 * seed))) / lasts
  const run = (t: number) => flow * t * (1 + fall / 2 - (fall * t) / (2 * lasts))
  const volume = time.map((t) => run(Math.min(t, sign) * stretch) + 0.5 * (run(t) - run(Math.min(t, sign))))
  const show = (name: string, kind: Kind, values: readonly number[], n: number, noise?: number) => {
    const model = instruments[name] ?? IDEAL
    const course = { truth: values, time, dim: KINDS[kind].dim, noise: noise ?? model.resolution / 2 }
    return asShown(course, model, 31 * seed + n)
  }
  const { first_head: from, last_head: to } = truth
  const head = time.map((t) => (from ?? to ?? 0) + (((to ?? from ?? 0) - (from ?? to ?? 0)) * t) / lasts)
  const firstSign = time.findIndex((t) => t >= sign)
  return {
    time: { values: Float64Array.from(time), dim: KINDS.time.dim, resolution: 0 },
    ...(instruments.mass
      ? {
          mass: show(
            'mass',
            'mass',
            volume.map((v) => density * v),
            1,
            truth.noise,
          ),
        }
      : { volume: show('volume', 'volume', volume, 1, truth.noise) }),
    ...(from === undefined && to === undefined ? {} : { head: show('head', 'length', head, 2, 0) }),
    ...(firstSign < 0
      ? {}
      : {
          event: {
            values: new Float64Array(count).fill(Number.NaN),
            texts: rows.map((row) => (row === firstSign ? 'first-sign' : '')),
            dim: KINDS.text.dim,
            resolution: 0,
          },
        }),
  }
}
