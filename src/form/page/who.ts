/** Who, when, on what; and the instruments of the day. */
import { dayOf, dayText } from '../clock.ts'
import { reasonsAgainst } from '../fit.ts'
import { isTypedIn, typedIn } from '../observed.ts'
import type { FormColumn, FormInstrument } from '../view.ts'
import { choice, h, labelled, type Option, part, textInput } from './dom.ts'
import { type Live, now } from './live.ts'

const whenFields = (live: Live): HTMLElement[] => {
  const { when } = live.state()
  const [, local = '', zone = ''] = /^(.{16})(?::\d\d)?(.*)$/.exec(when) ?? []
  const time = h('input', { type: 'datetime-local' })
  time.value = local
  const offset = textInput(zone, () => write())
  const write = (): void =>
    live.change((state) => ({ ...state, when: `${time.value}${offset.value.trim()}` }))
  time.addEventListener('input', write)
  return [
    labelled(
      { label: 'Tested on', spot: 'when', help: 'when the test began, by the clock on the wall' },
      time,
    ),
    labelled({ label: 'Offset from UTC', help: 'as in +01:00' }, offset),
  ]
}

const byField = (live: Live): HTMLElement => {
  const people = live.view.people.filter(
    (each) => each.roles.includes('record') || live.state().by.includes(each.id),
  )
  const boxes = people.map((each) => {
    const box = h('input', { type: 'checkbox' })
    box.checked = live.state().by.includes(each.id)
    box.addEventListener('change', () =>
      live.change((state) => ({
        ...state,
        by: box.checked ? [...state.by, each.id] : state.by.filter((id) => id !== each.id),
      })),
    )
    return h('label', { class: 'tick' }, box, each.name)
  })
  return h(
    'fieldset',
    { class: 'field', 'data-spot': 'by' },
    h('legend', {}, 'Recorded by'),
    ...boxes,
    h('p', { class: 'fault' }),
  )
}

const witnessField = (live: Live): HTMLElement => {
  const people = live.view.people.filter((each) => each.roles.includes('witness'))
  const options = [
    { value: '', text: 'nobody' },
    ...people.map((each) => ({ value: each.id, text: each.name })),
  ]
  const select = choice(live.state().witness, options, (witness) =>
    live.change((state) => ({ ...state, witness })),
  )
  return labelled({ label: 'Witness', spot: 'witness', help: 'one person fills one role on one run' }, select)
}

const paperField = (live: Live): HTMLElement => {
  const box = h('input', { type: 'checkbox' })
  box.checked = isTypedIn(live.state().body)
  box.addEventListener('change', () =>
    live.change((state) => ({ ...state, body: typedIn(state.body, box.checked ? dayText(now()) : null) })),
  )
  return h(
    'label',
    { class: 'tick wide' },
    box,
    'Typed in from a paper sheet: tested on the time above, typed in today',
  )
}

export const whoPart = (live: Live): HTMLElement => {
  const { articles } = live.view
  const article = choice(
    live.state().article,
    articles.map((each) => ({ value: each, text: each })),
    (value) => live.change((state) => ({ ...state, article: value })),
  )
  return part(
    'who',
    'Who, when, on what',
    h(
      'div',
      { class: 'fields' },
      articles.length > 1 ? labelled({ label: 'Article', spot: 'article' }, article) : null,
      ...whenFields(live),
      witnessField(live),
      byField(live),
      paperField(live),
    ),
  )
}

/** Those that fit first, then the others with their reason. */
export const instrumentOptions = (
  instruments: readonly FormInstrument[],
  column: string,
  day: string,
): Option[] => {
  const able = instruments.filter((each) => each.columns[column])
  const told = able.map((each) => ({ each, against: reasonsAgainst(each, column, day) }))
  const fit = told.filter(({ against }) => against.length === 0)
  const other = told.filter(({ against }) => against.length > 0)
  return [
    { value: '', text: '—' },
    ...fit.map(({ each }) => ({
      value: each.id,
      text: `${each.id}: ${each.title}`,
      group: 'as the card asks, in calibration on the day',
    })),
    ...other.map(({ each, against }) => ({
      value: each.id,
      text: `${each.id}: ${each.title} (${against.join('; ')})`,
      group: 'not as the card asks, or not in calibration',
    })),
  ]
}

/** A new instrument brings its unit, as long as nothing was read. */
const chooseInstrument = (live: Live, column: FormColumn, id: string): void => {
  const unit = live.view.instruments.find((each) => each.id === id)?.unit
  live.change((state) => {
    const at = state.columns.findIndex((each) => each.name === column.name)
    const untouched = state.rows.every((row) => (row[at] ?? '').trim() === '')
    const columns =
      unit && untouched && column.form === 'number'
        ? state.columns.map((each, index) => (index === at ? { ...each, unit } : each))
        : state.columns
    return { ...state, columns, instruments: { ...state.instruments, [column.name]: id } }
  })
}

const instrumentField = (live: Live, column: FormColumn): HTMLElement => {
  const { view } = live
  const day = dayOf(live.state().when)
  const chosen = live.state().instruments[column.name] ?? ''
  const select = choice(chosen, instrumentOptions(view.instruments, column.name, day), (id) =>
    chooseInstrument(live, column, id),
  )
  return labelled({ label: column.label, spot: `instruments.${column.name}`, help: column.meaning }, select)
}

export const instrumentsPart = (live: Live): HTMLElement => {
  const fields = h('div', { class: 'fields' })
  const render = (): void => {
    const names = new Set(live.state().columns.map((column) => column.name))
    const shown = live.view.columns.filter(
      (column) => column.instrument !== 'none' && (names.has(column.name) || column.inside),
    )
    fields.replaceChildren(...shown.map((column) => instrumentField(live, column)))
    fields.parentElement?.toggleAttribute('hidden', shown.length === 0)
  }
  const keyOf = (): string =>
    `${dayOf(live.state().when)} ${live
      .state()
      .columns.map((each) => each.name)
      .join(' ')}`
  const section = part('instruments', 'Instruments', fields)
  render()
  let key = keyOf()
  live.onChange(() => {
    if (key === keyOf()) return
    key = keyOf()
    render()
  })
  return section
}
