/** The table of readings: each cell a control, checked at its place. */
import { seenDecimalComma, signTurned, typedNumber } from '../numbers.ts'
import { type ColumnEntry, withCell, without } from '../state.ts'
import type { FormColumn } from '../view.ts'
import { button, choice, h } from './dom.ts'
import type { Live } from './live.ts'

export type ReadingsTable = {
  readonly element: HTMLElement
  readonly render: () => void
  /** The first cell of the last row that is still empty. */
  readonly focusOpen: () => void
  /** Of the cell that was touched last. */
  readonly turnSign: () => void
}

type Cell = HTMLInputElement | HTMLSelectElement

const isNumbers = (column: ColumnEntry): boolean => column.unit !== 'text' && !column.unit.startsWith('hh:mm')

export const readingsTable = (live: Live, look: () => void): ReadingsTable => {
  const body = h('tbody')
  const head = h('thead')
  const element = h(
    'div',
    { class: 'scroll readings', tabindex: 0, role: 'region', 'aria-label': 'Table of readings' },
    h('table', { class: 'scroll' }, h('caption', { class: 'unseen' }, 'Readings, a row each'), head, body),
  )
  let last: HTMLInputElement | null = null
  const fieldOf = (column: ColumnEntry): FormColumn | undefined =>
    live.view.columns.find((each) => each.name === column.name)

  const put = (row: number, column: number, text: string): void => {
    live.change((state) => withCell(state, row, column, text))
    look()
  }

  /** Asks what a comma means, at the cell. */
  const ask = (
    input: HTMLInputElement,
    row: number,
    column: number,
    decimal: string,
    grouped: string,
  ): void => {
    const answer = (text: string) => () => {
      input.value = text
      put(row, column, text)
      question.remove()
      input.focus()
    }
    input.parentElement?.querySelector('.question')?.remove()
    const question = h(
      'div',
      { class: 'question', role: 'group', 'aria-label': `What is ${input.value}?` },
      `${input.value} is`,
      button(decimal, answer(decimal)),
      button(grouped, answer(grouped)),
    )
    input.after(question)
    live.say(`${input.value} can mean ${decimal} or ${grouped}: choose at the cell`)
  }

  const finish = (input: HTMLInputElement, row: number, column: number): void => {
    const { columns, rows } = live.state()
    const entry = columns[column]
    input.closest('td')?.setAttribute('data-touched', '')
    if (!entry || !isNumbers(entry) || input.value.trim() === '') return
    const others = rows.filter((_, at) => at !== row).map((cells) => cells[column] ?? '')
    const read = typedNumber(input.value, seenDecimalComma(others) === true ? true : undefined)
    if (read.is === 'ambiguous') ask(input, row, column, read.decimal, read.grouped)
    if (read.is !== 'number' || !read.changed) return
    input.value = read.text
    put(row, column, read.text)
  }

  /** Enter goes to the next cell, as a keypad expects. */
  const step = (from: HTMLElement): void => {
    const cells = [...body.querySelectorAll<HTMLElement>('input, select')]
    const next = cells[cells.indexOf(from) + 1]
    if (next) next.focus()
    else document.querySelector<HTMLElement>('button.large')?.focus()
  }

  const inputFor = (entry: ColumnEntry, row: number, column: number): Cell => {
    const field = fieldOf(entry)
    const value = live.state().rows[row]?.[column] ?? ''
    const name = `${field?.label ?? entry.name}, row ${row + 1}`
    if (field && field.choices.length > 0) {
      const options = ['', ...field.choices].map((word) => ({ value: word, text: word || '—' }))
      const select = choice(value, options, (text) => put(row, column, text))
      select.setAttribute('aria-label', name)
      return select
    }
    const numbers = isNumbers(entry)
    const input = h('input', {
      type: 'text',
      inputmode: numbers ? 'decimal' : 'text',
      autocomplete: 'off',
      enterkeyhint: 'next',
      'aria-label': name,
      class: numbers ? 'number' : undefined,
    })
    input.value = value
    input.addEventListener('input', () => put(row, column, input.value))
    input.addEventListener('change', () => finish(input, row, column))
    input.addEventListener('focus', () => {
      last = input
    })
    input.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return
      // Else the button that gets the cursor would be pressed by the same key.
      event.preventDefault()
      finish(input, row, column)
      step(input)
    })
    return input
  }

  const removeRow = (row: number): HTMLElement =>
    button(
      '×',
      () => {
        live.change((state) => ({ ...state, rows: without(state.rows, row) }))
        render()
        look()
      },
      { 'aria-label': `Remove row ${row + 1}`, class: 'bare' },
    )

  const rowOf = (row: number): HTMLElement =>
    h(
      'tr',
      {},
      h('th', { scope: 'row' }, String(row + 1)),
      ...live
        .state()
        .columns.map((entry, column) =>
          h(
            'td',
            { 'data-spot': `cell.${row}.${column}` },
            inputFor(entry, row, column),
            h('p', { class: 'fault' }),
          ),
        ),
      h('td', {}, removeRow(row)),
    )

  const unitOf = (entry: ColumnEntry, at: number): HTMLElement => {
    const units = fieldOf(entry)?.units ?? [entry.unit]
    if (units.length < 2 && units.includes(entry.unit))
      return h('span', {}, entry.unit === 'text' || entry.unit === '1' ? '' : entry.unit)
    const select = choice(
      entry.unit,
      units.map((unit) => ({ value: unit, text: unit })),
      (unit) => {
        live.change((state) => ({
          ...state,
          columns: state.columns.map((each, index) => (index === at ? { ...each, unit } : each)),
        }))
        render()
        look()
      },
    )
    select.setAttribute('aria-label', `Unit of ${entry.name}`)
    return select
  }

  const headOf = (entry: ColumnEntry, at: number): HTMLElement => {
    const field = fieldOf(entry)
    const stop = field?.stop ? h('small', { class: 'stop-at' }, `stop at ${field.stop.text}`) : null
    return h(
      'th',
      { scope: 'col', title: field?.meaning },
      field?.label ?? entry.name,
      h('div', {}, unitOf(entry, at)),
      stop,
    )
  }

  const render = (): void => {
    const { columns, rows } = live.state()
    head.replaceChildren(
      h(
        'tr',
        {},
        h('th', { scope: 'col' }, h('span', { class: 'unseen' }, 'row')),
        ...columns.map(headOf),
        h('th', { scope: 'col' }, h('span', { class: 'unseen' }, 'remove')),
      ),
    )
    body.replaceChildren(...rows.map((_, row) => rowOf(row)))
  }

  let shape = ''
  const shapeOf = (): string => JSON.stringify(live.state().columns)
  live.onChange(() => {
    if (shape === shapeOf()) return
    shape = shapeOf()
    render()
  })
  shape = shapeOf()

  return {
    element,
    render,
    focusOpen: () => {
      const cells = [...(body.lastElementChild?.querySelectorAll<Cell>('input, select') ?? [])]
      const open = cells.find((cell) => cell.value === '') ?? cells[0]
      open?.focus()
      open?.scrollIntoView({ block: 'nearest' })
    },
    turnSign: () => {
      if (!last?.isConnected) return
      last.value = signTurned(last.value)
      last.dispatchEvent(new Event('input'))
      last.focus()
    },
  }
}
