/** Rows from a spreadsheet: pasted, looked at, then taken. */
import { type Pasted, pasteRows } from '../paste.ts'
import { button, h, labelled } from './dom.ts'
import type { Live } from './live.ts'

export type PastePart = {
  readonly element: HTMLElement
  /** Looks at cells that were pasted elsewhere. */
  readonly offer: (text: string) => void
}

export const pastePart = (live: Live, taken: () => void): PastePart => {
  const area = h('textarea', { rows: 4 })
  const shown = h('div', { class: 'pasted' })
  let answers: Record<string, boolean> = {}

  const questions = (pasted: Pasted): HTMLElement[] =>
    pasted.ask.map(({ column, cell }) =>
      h(
        'p',
        { class: 'question' },
        `${column}: what is the comma in ${cell}? `,
        button('a decimal sign', () => decide(column, true)),
        button('a mark between thousands', () => decide(column, false)),
      ),
    )
  const decide = (column: string, comma: boolean): void => {
    answers = { ...answers, [column]: comma }
    look()
  }
  const look = (): void => {
    shown.replaceChildren()
    if (area.value.trim() === '') return
    const pasted = pasteRows(live.state(), area.value, 0, answers)
    const { columns, rows } = pasted.state
    const first = rows.slice(-pasted.rows).slice(0, 5)
    const table = h(
      'table',
      { class: 'scroll' },
      h('caption', { class: 'unseen' }, 'The first pasted rows'),
      h('thead', {}, h('tr', {}, ...columns.map((column) => h('th', { scope: 'col' }, column.name)))),
      h('tbody', {}, ...first.map((cells) => h('tr', {}, ...cells.map((cell) => h('td', {}, cell))))),
    )
    const take = button(`Take ${pasted.rows} rows`, () => {
      live.change((state) => pasteRows(state, area.value, 0, answers).state)
      area.value = ''
      answers = {}
      shown.replaceChildren()
      taken()
      live.say(`${pasted.rows} rows were taken.`)
      area.focus()
    })
    shown.append(
      ...pasted.notes.map((note) => h('p', {}, note)),
      ...questions(pasted),
      h(
        'div',
        { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'The first pasted rows' },
        table,
      ),
      ...pasted.refused.map((why) => h('p', { class: 'fault' }, `Not taken: ${why}.`)),
      ...(pasted.ask.length + pasted.refused.length === 0 ? [take] : []),
    )
  }
  area.addEventListener('input', look)
  const element = h(
    'details',
    {},
    h('summary', {}, 'Paste from a spreadsheet'),
    labelled(
      {
        label: 'Cells, with or without their heads',
        wide: true,
        help: 'columns go by their heads, else in the order of the table',
      },
      area,
    ),
    shown,
  )
  const offer = (text: string): void => {
    area.value = text
    answers = {}
    element.open = true
    look()
    area.focus()
    live.say('Cells of a spreadsheet: look at them below the table, then take them.')
  }
  return { element, offer }
}
