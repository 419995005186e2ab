/** The table of readings: each cell a control, checked at its place. */
import { seenDecimalComma, signTurned, type TypedNumber, typedNumber } from '../numbers.ts'
import { type ColumnEntry, withCell, without } from '../state.ts'
import type { FormColumn } from '../view.ts'
import { button, buttonTwice, choice, h } from './dom.ts'
import { drawnBy, redrawn } from './draw.ts'
import type { Live } from './live.ts'

export type ReadingsTable = {
  readonly element: HTMLElement
  readonly render: () => void
  /** The first cell of a row that is still empty. */
  readonly focusOpen: (row: number) => void
  /** Of the cell that was touched last. */
  readonly turnSign: () => void
}

/** More columns than these do not lie side by side on a phone. */
const MOST_ABREAST = 3

type Cell = HTMLInputElement | HTMLSelectElement

const isNumbers = (column: ColumnEntry): boolean => column.unit !== 'text' && !column.unit.startsWith('hh:mm')

/** `offer` takes cells that somebody pastes into one cell. */
export const readingsTable = (live: Live, offer: (text: string) => void): ReadingsTable => {
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

  /** What a comma means in a column, as it was said once. */
  const commas = new Map<string, boolean>()

  const put = (row: number, column: number, text: string): void =>
    live.change((state) => withCell(state, row, column, text))

  /** Asks what a comma means, at the cell. */
  const ask = (
    input: HTMLInputElement,
    row: number,
    column: number,
    decimal: string,
    grouped: string,
  ): void => {
    const answer = (text: string) => () => {
      commas.set(live.state().columns[column]?.name ?? '', text === decimal)
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
  }

  const numberIn = (entry: ColumnEntry, text: string, row: number, column: number): TypedNumber => {
    const others = live.state().rows.flatMap((cells, at) => (at === row ? [] : [cells[column] ?? '']))
    return typedNumber(text, commas.get(entry.name) ?? (seenDecimalComma(others) || undefined))
  }

  const finish = (input: HTMLInputElement, row: number, column: number): void => {
    const entry = live.state().columns[column]
    if (!entry || !isNumbers(entry) || input.value.trim() === '') return
    const read = numberIn(entry, input.value, row, column)
    if (read.is === 'ambiguous') {
      ask(input, row, column, read.decimal, read.grouped)
      live.say(`${input.value} can mean ${read.decimal} or ${read.grouped}: choose at the cell`)
    }
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
      last = numbers ? input : null
    })
    input.addEventListener('paste', (event) => {
      const text = event.clipboardData?.getData('text/plain').trimEnd() ?? ''
      if (!/[\t\n]/.test(text)) return
      event.preventDefault()
      offer(text)
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

  /** A reading cannot be had again. */
  const removeRow = (row: number): HTMLElement =>
    buttonTwice(
      '×',
      `Really remove row ${row + 1}`,
      () => {
        live.change((state) => ({ ...state, rows: without(state.rows, row) }))
        render()
        element.focus()
      },
      { 'aria-label': `Remove row ${row + 1}`, class: 'bare' },
    )

  const cellOf = (entry: ColumnEntry, row: number, column: number): HTMLElement => {
    const control = inputFor(entry, row, column)
    const cell = h(
      'td',
      {
        'data-spot': `cell.${row}.${column}`,
        'data-label': fieldOf(entry)?.label ?? entry.name,
        class: entry.unit === 'text' ? 'words' : undefined,
      },
      control,
      h('p', { class: 'fault' }),
    )
    // What was asked and not answered yet is asked again.
    const isOpen = isNumbers(entry) && typedNumber(control.value).is === 'ambiguous'
    const read = isOpen ? numberIn(entry, control.value, row, column) : null
    if (read?.is === 'ambiguous' && control instanceof HTMLInputElement)
      ask(control, row, column, read.decimal, read.grouped)
    return cell
  }

  const rowOf = (row: number): HTMLElement =>
    h(
      'tr',
      {},
      h('th', { scope: 'row' }, String(row + 1)),
      ...live.state().columns.map((entry, column) => cellOf(entry, row, column)),
      h('td', { class: 'remove' }, removeRow(row)),
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

  const draw = (): void => {
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
    element.classList.toggle('many', columns.length > MOST_ABREAST)
  }

  const render = (): void => redrawn(element, draw)

  const shapeOf = (): string => JSON.stringify(live.state().columns)
  drawnBy(live, element, shapeOf, draw)

  return {
    element,
    render,
    focusOpen: (row) => {
      const cells = [...(body.children[row]?.querySelectorAll<Cell>('input, select') ?? [])]
      const open = cells.find((cell) => cell.value === '') ?? cells[0]
      open?.focus()
      open?.scrollIntoView({ block: 'nearest' })
    },
    turnSign: () => {
      if (!last?.isConnected) return live.say('Choose a cell with a number first.')
      last.value = signTurned(last.value)
      last.dispatchEvent(new Event('input'))
      last.focus()
    },
  }
}
