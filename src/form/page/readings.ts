/** The readings: one large button for the next one, timers, the table, paste, and a data file. */
import { durationText } from '../clock.ts'
import { isEmptyColumn, withColumn, withoutColumn } from '../state.ts'
import type { FormColumn } from '../view.ts'
import { dataFilePart } from './data-file.ts'
import { button, choice, h, labelled, part, textInput } from './dom.ts'
import { drawnBy } from './draw.ts'
import { type Live, now } from './live.ts'
import { pastePart } from './pasting.ts'
import { reachPart } from './reach.ts'
import { stopAlarm } from './stop.ts'
import type { Store } from './store.ts'
import { readingsTable } from './table.ts'

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

/** Why a column of this name cannot be added; empty where it can. */
const nameFault = (name: string, live: Live): string => {
  if (!/^[a-z][a-z0-9_]*$/.test(name))
    return `\`${name}\` is no name of a column: write small letters, digits and \`_\`, a letter first.`
  const isThere = live.state().columns.some((column) => column.name === name)
  return isThere ? `There is a column ${name} already.` : ''
}

/** The name of a column that the method leaves open: `at_<station>` asks for the station. */
const addColumn = (live: Live): HTMLElement[] => {
  const there = new Set(live.state().columns.map((column) => column.name))
  const free = live.view.columns.filter(
    (column) => !column.inside && (!there.has(column.name) || column.name.includes('<')),
  )
  if (free.length === 0) return []
  const name = textInput('', () => undefined)
  const named = labelled({ label: 'Its name' }, name)
  const chosen = (): FormColumn | undefined => free.find((column) => column.name === select.value)
  const show = (): void => {
    named.hidden = !chosen()?.name.includes('<')
    name.value = chosen()?.name ?? ''
  }
  const select = choice(
    free[0]?.name ?? '',
    free.map((column) => ({ value: column.name, text: `${column.label}: ${column.meaning}` })),
    show,
  )
  show()
  const add = button('Add the column', () => {
    const column = chosen()
    if (!column) return
    const written = name.value.trim()
    const fault = nameFault(written, live)
    if (fault) return live.say(fault, true)
    live.change((state) => withColumn(state, { name: written, unit: column.units[0] ?? '1' }))
  })
  return [h('div', { class: 'fields' }, labelled({ label: 'One more column' }, select), named), add]
}

/** Only a column in which nothing stands can be left out. */
const leaveOut = (live: Live): HTMLElement[] =>
  live.state().columns.flatMap(({ name }, at) =>
    isEmptyColumn(live.state(), at)
      ? [
          button(`Leave out ${name}`, () => {
            if (isEmptyColumn(live.state(), at)) live.change((state) => withoutColumn(state, at))
          }),
        ]
      : [],
  )

/** Drawn again whenever other columns are free or empty. */
const columnsPart = (live: Live): HTMLElement => {
  const box = h('div')
  const element = h('details', {}, h('summary', {}, 'Columns'), box)
  const shapeOf = (): string => {
    const state = live.state()
    return JSON.stringify(state.columns.map(({ name }, at) => [name, isEmptyColumn(state, at)]))
  }
  drawnBy(live, box, shapeOf, () => {
    const parts = [...addColumn(live), ...leaveOut(live)]
    element.hidden = parts.length === 0
    box.replaceChildren(...parts)
  })
  return element
}

export const readingsPart = (live: Live, store: Store): HTMLElement => {
  const alarm = stopAlarm(live)
  const paste = pastePart(live, () => table.render())
  const table = readingsTable(live, paste.offer)
  const stamp = button(
    'Take a reading now',
    () => {
      const { row, wentBack } = live.stamp()
      if (wentBack)
        live.say('The clock of this device was set back: write the time of this reading yourself.', true)
      table.render()
      table.focusOpen(row)
    },
    { class: 'large' },
  )
  const sign = button('±', table.turnSign, {
    class: 'sign',
    'aria-label': 'Change the sign of the cell',
    mousedown: keepFocus,
    pointerdown: keepFocus,
  })
  return part(
    'readings',
    'Readings',
    alarm,
    h('div', { class: 'stamping' }, stamp, timers(live)),
    reachPart(live),
    table.element,
    h(
      'div',
      { class: 'tools' },
      sign,
      button('Add a row', () => {
        live.change((state) => ({ ...state, rows: [...state.rows, state.columns.map(() => '')] }))
        table.render()
        table.focusOpen(live.state().rows.length - 1)
      }),
    ),
    columnsPart(live),
    paste.element,
    dataFilePart(live, store),
  )
}

/** The keypad of a phone stays, and the cell keeps the cursor. */
const keepFocus = (event: Event): void => event.preventDefault()
