/** The card's own field: where along the circuit the motion is read. */
import type { CardField } from '../method.ts'

const NAME = /^[a-z][a-z0-9_]*$/
const TAKEN = ['load', 'fixture']

export const stations: CardField = {
  name: 'stations',
  meaning:
    'places along the circuit at which the motion is read, in order from the loaded end to the fixture',
  required: false,
  read: (raw) => {
    const fault = (message: string, path: readonly (string | number)[]) => ({
      ok: false as const,
      error: [
        {
          code: 'circuit-stiffness/stations',
          message,
          start: 0,
          end: 0,
          path,
          hint: 'write `stations: [horn, bellcrank, stick]`',
        },
      ],
    })
    if (!Array.isArray(raw) || raw.length === 0) return fault('`stations` is a list of names', [])
    for (const [i, name] of raw.entries()) {
      if (typeof name !== 'string' || !NAME.test(name) || TAKEN.includes(name))
        return fault(
          'a station is named by lower case letters, digits and `_`, beginning with a letter; `load` and `fixture` are the ends of the circuit',
          [i],
        )
      if (raw.indexOf(name) !== i) return fault(`the station ${name} is there twice`, [i])
    }
    return { ok: true, value: raw }
  },
}
