/** Who, when, on what; and the instruments of the day. */
import { dayOf, dayText, offsetText } from '../clock.ts'
import { offered } from '../fit.ts'
import { isTypedIn, typedIn } from '../observed.ts'
import type { RunState } from '../state.ts'
import type { FormColumn } from '../view.ts'
import { choice, h, instrumentOptions, labelled, part, textInput, tickList } from './dom.ts'
import { drawnBy } from './draw.ts'
import { type Live, now } from './live.ts'

const partsOf = (when: string): readonly [string, string] => {
  const [, local = '', zone = ''] = /^(.{16})(?::\d\d)?(.*)$/.exec(when) ?? []
  return [local, zone]
}

const whenFields = (live: Live): HTMLElement[] => {
  const [local, zone] = partsOf(live.state().when)
  const time = h('input', { type: 'datetime-local' })
  time.value = local
  const offset = textInput(zone, () => write())
  const write = (): void =>
    live.change((state) => ({ ...state, when: `${time.value}${offset.value.trim()}` }))
  let before = local
  // Where the place had another offset on the day that is typed (summer time), an offset that came from the device follows.
  time.addEventListener('input', () => {
    const own = offsetText(now(before))
    if (time.value !== '' && (offset.value === own || offset.value === ''))
      offset.value = offsetText(now(time.value))
    before = time.value || before
    write()
  })
  // The first stamp, and the tick for a paper sheet, write here as well.
  live.onChange(({ when }) => {
    if (when === `${time.value}${offset.value.trim()}`) return
    const [there, zoneThere] = partsOf(when)
    if (there !== time.value) time.value = there
    if (zoneThere !== '') offset.value = zoneThere
    before = there || before
  })
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
  return tickList(
    { legend: 'Recorded by', spot: 'by' },
    people.map(({ id, name }) => ({ value: id, text: name })),
    () => live.state().by,
    (by) => live.change((state) => ({ ...state, by })),
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

/** A sheet may be older than the cards of today: the revision printed on it is what was in hand. */
const paperFields = (live: Live): HTMLElement[] => {
  const box = h('input', { type: 'checkbox' })
  const revision = textInput(live.state().revision, (text) =>
    live.change((state) => ({ ...state, revision: text.trim() })),
  )
  const printed = labelled(
    {
      label: 'Revision of the card on the sheet',
      spot: 'card-revision',
      help: 'as printed in its title block',
      wide: true,
    },
    revision,
  )
  const show = (): void => {
    printed.hidden = !box.checked
  }
  box.checked = isTypedIn(live.state().body)
  box.addEventListener('change', () => {
    // The time at which this page was opened is not that of a test that is on paper.
    const isGuess = box.checked && live.state().when === live.run().begunAt
    live.change((state) => ({
      ...state,
      when: isGuess ? '' : state.when,
      body: typedIn(state.body, box.checked ? dayText(now()) : null),
    }))
    revision.value = live.state().revision
    show()
  })
  show()
  return [
    h(
      'label',
      { class: 'tick wide' },
      box,
      'Typed in from a paper sheet: tested on the time above, typed in today',
    ),
    printed,
  ]
}

export const whoPart = (live: Live): HTMLElement => {
  const { articles } = live.view
  const article = choice(
    live.state().article,
    [{ value: '', text: 'say which' }, ...articles.map((each) => ({ value: each, text: each }))],
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
      ...paperFields(live),
    ),
  )
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
  const options = instrumentOptions(
    offered(view.instruments, column.name, day),
    ['as the card asks, in calibration on the day', 'not as the card asks, or not in calibration'],
    '—',
  )
  const select = choice(chosen, options, (id) => chooseInstrument(live, column, id))
  return labelled({ label: column.label, spot: `instruments.${column.name}`, help: column.meaning }, select)
}

/** Columns of the table, or of the file that stands for it. */
const namesRead = ({ columns, data }: RunState): string[] =>
  data?.columns && typeof data.columns === 'object'
    ? Object.keys(data.columns)
    : columns.map((column) => column.name)

export const instrumentsPart = (live: Live): HTMLElement => {
  const fields = h('div', { class: 'fields' })
  const render = (): void => {
    const names = new Set(namesRead(live.state()))
    const shown = live.view.columns.filter(
      (column) => column.instrument !== 'none' && (names.has(column.name) || column.inside),
    )
    fields.replaceChildren(...shown.map((column) => instrumentField(live, column)))
    fields.parentElement?.toggleAttribute('hidden', shown.length === 0)
  }
  const keyOf = (): string => `${dayOf(live.state().when)} ${namesRead(live.state()).join(' ')}`
  const section = part('instruments', 'Instruments', fields)
  drawnBy(live, fields, keyOf, render)
  return section
}
