/** The readings: one large button for the next one, timers, the table, paste, and a data file. */
import { durationText, stampText } from '../clock.ts'
import { isBlankRow, withColumn, withoutColumn } from '../state.ts'
import type { FormColumn } from '../view.ts'
import { dataFilePart } from './data-file.ts'
import { button, choice, h, labelled, part, textInput } from './dom.ts'
import { type Live, now } from './live.ts'
import { pastePart } from './pasting.ts'
import { stopAlarm } from './stop.ts'
import type { Store } from './store.ts'
import { readingsTable } from './table.ts'

/** Appends a row with the time of now, and gives the place of its first open cell. */
const stampRow = (live: Live): void => {
  const at = now()
  const { stamps } = live.run()
  const { columns } = live.view
  live.change((state) => {
    const cells = state.columns.map((column) => {
      const isTime = columns.find((each) => each.name === column.name)?.form === 'time'
      return isTime ? stampText(state, column, at, stamps) : ''
    })
    return { ...state, rows: [...state.rows.filter((row) => !isBlankRow(row)), cells] }
  })
  live.stamp({ first: stamps?.first ?? at.epoch, last: at.epoch })
}

const timers = (live: Live): HTMLElement => {
  const box = h('p', { class: 'timers', role: 'timer', 'aria-live': 'off' })
  const show = (): void => {
    const { stamps } = live.run()
    box.replaceChildren()
    if (!stamps) return
    const { epoch } = now()
    const since = (epoch - stamps.last) / 1000
    const { every } = live.view
    const left = every === null ? null : every - since
    box.append(
      h('span', {}, 'since the first ', h('b', {}, durationText((epoch - stamps.first) / 1000))),
      h('span', {}, 'since the last ', h('b', {}, durationText(since))),
      ...(left === null
        ? []
        : [
            h(
              'span',
              { class: left < 0 ? 'due' : undefined },
              left < 0 ? 'next is due since ' : 'next in ',
              h('b', {}, durationText(Math.abs(left))),
            ),
          ]),
    )
  }
  show()
  const ticking = setInterval(
    () => (box.isConnected || !live.run().stamps ? show() : clearInterval(ticking)),
    1000,
  )
  live.onChange(show)
  return box
}

/** The name of a column that the method leaves open: `at_<station>` asks for the station. */
const addColumn = (live: Live, render: () => void): HTMLElement | null => {
  const there = new Set(live.state().columns.map((column) => column.name))
  const free = live.view.columns.filter(
    (column) => !column.inside && (!there.has(column.name) || column.name.includes('<')),
  )
  if (free.length === 0) return null
  const name = textInput('', () => undefined)
  const named = labelled({ label: 'Its name' }, name)
  const chosen = (): FormColumn | undefined => free.find((column) => column.name === select.value)
  const select = choice(
    free[0]?.name ?? '',
    free.map((column) => ({ value: column.name, text: `${column.label}: ${column.meaning}` })),
    () => {
      named.hidden = !chosen()?.name.includes('<')
      name.value = chosen()?.name ?? ''
    },
  )
  named.hidden = !free[0]?.name.includes('<')
  name.value = free[0]?.name ?? ''
  return h(
    'details',
    {},
    h('summary', {}, 'Columns'),
    h('div', { class: 'fields' }, labelled({ label: 'One more column' }, select), named),
    button('Add the column', () => {
      const column = chosen()
      if (!column) return
      const written = column.name.includes('<') ? name.value.trim() : column.name
      live.change((state) => withColumn(state, { name: written, unit: column.units[0] ?? '1' }))
      render()
    }),
    ...live.state().columns.map(({ name: own }, at) =>
      live.state().rows.every((row) => (row[at] ?? '').trim() === '')
        ? button(`Leave out ${own}`, () => {
            live.change((state) => withoutColumn(state, at))
            render()
          })
        : null,
    ),
  )
}

export const readingsPart = (live: Live, store: Store): HTMLElement => {
  const alarm = stopAlarm(live)
  const table = readingsTable(live, alarm.look)
  const more = h('div')
  const render = (): void => {
    table.render()
    more.replaceChildren(...[addColumn(live, render)].filter((each) => each !== null))
  }
  const stamp = button(
    'Take a reading now',
    () => {
      stampRow(live)
      table.render()
      table.focusOpen()
    },
    { class: 'large' },
  )
  const sign = button('±', table.turnSign, {
    class: 'sign',
    'aria-label': 'Change the sign of the cell',
    mousedown: keepFocus,
    pointerdown: keepFocus,
  })
  render()
  return part(
    'readings',
    'Readings',
    alarm.element,
    h('div', { class: 'stamping' }, stamp, timers(live)),
    table.element,
    h(
      'div',
      { class: 'tools' },
      sign,
      button('Add a row', () => {
        live.change((state) => ({ ...state, rows: [...state.rows, state.columns.map(() => '')] }))
        table.render()
        table.focusOpen()
      }),
    ),
    more,
    pastePart(live, render),
    dataFilePart(live, store),
  )
}

/** The keypad of a phone stays, and the cell keeps the cursor. */
const keepFocus = (event: Event): void => event.preventDefault()
