/** Boxes of a sheet: what is written once, above the readings and below them. */
import type { CardState } from '../campaign/types.ts'
import type { InstrumentDemand } from '../format/types.ts'
import type { ColumnField } from '../methods/method.ts'
import { printed } from '../quantity/display.ts'
import type { Block } from './view.ts'
import { nameWords } from './words.ts'

const askedText = (demand: InstrumentDemand | undefined): string =>
  [
    demand?.range ? `${demand.range.low.text} to ${demand.range.high.text}` : '',
    demand?.uncertainty ? `± ${demand.uncertainty.text.replace(/^<=\s*/, '')}` : '',
  ]
    .filter((piece) => piece !== '')
    .map(printed)
    .join(', ')

export const boxesOnTop = ({ card }: CardState, fields: readonly ColumnField[]): Block => ({
  is: 'boxes',
  items: [
    { label: 'Date and time', note: '' },
    { label: 'Ambient temperature, remarks', note: '' },
    ...fields
      .filter(
        (field) =>
          field.instrument !== 'none' && (field.instrument === 'required' || card.instruments[field.name]),
      )
      .map((field) => ({
        label: `Instrument: ${nameWords(field.name)}`,
        note: askedText(card.instruments[field.name]),
      })),
    ...card.ask.map((name) => ({ label: `Measured on the day: ${nameWords(name)}`, note: '' })),
  ],
})

export const boxesBelow: Block = {
  is: 'boxes',
  items: [
    { label: 'Deviations, what was seen and heard', note: '', wide: true },
    { label: 'Fitted for the test, and must come out again', note: '', wide: true },
    { label: 'Done by, signature', note: '' },
    { label: 'Witness, signature', note: '' },
    { label: 'Typed in as run', note: '' },
  ],
}
