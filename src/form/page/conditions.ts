/** What was measured on the day, the conditions, zero checks, and what was fitted for the test. */
import { dayOf } from '../clock.ts'
import { offered } from '../fit.ts'
import { articleOf, EMPTY_GIVEN, type GivenEntry } from '../state.ts'
import type { FormGiven } from '../view.ts'
import { button, choice, h, instrumentOptions, labelled, part, textInput, tickList } from './dom.ts'
import { drawnBy } from './draw.ts'
import { listEditor } from './lists.ts'
import type { Live } from './live.ts'

const cardValue = (given: FormGiven, article: string): string => given.card[article] ?? given.card['*'] ?? ''

const valueControl = (live: Live, given: FormGiven) => {
  const entry = live.state().given[given.name] ?? EMPTY_GIVEN
  const put = (value: string): void =>
    live.change((state) => {
      const before: GivenEntry = state.given[given.name] ?? EMPTY_GIVEN
      return { ...state, given: { ...state.given, [given.name]: { ...before, value } } }
    })
  if (given.form !== 'choice') return textInput(entry.value, put)
  const options = [{ value: '', text: '—' }, ...given.choices.map((word) => ({ value: word, text: word }))]
  return choice(entry.value, options, put)
}

const withControl = (live: Live, given: FormGiven): HTMLSelectElement => {
  const options = instrumentOptions(
    offered(live.view.instruments, null, dayOf(live.state().when)),
    ['in calibration on the day', 'not in calibration on the day'],
    'not named',
  )
  const entry = live.state().given[given.name] ?? EMPTY_GIVEN
  return choice(entry.with, options, (id) =>
    live.change((state) => {
      const before = state.given[given.name] ?? EMPTY_GIVEN
      return { ...state, given: { ...state.given, [given.name]: { ...before, with: id } } }
    }),
  )
}

/** A result of another run in the place of a value. */
const resultControl = (live: Live, given: FormGiven): HTMLSelectElement => {
  const entry = live.state().given[given.name] ?? EMPTY_GIVEN
  const options = given.results.map(({ run, measure, label }) => ({
    value: `${run} ${measure}`,
    text: label,
  }))
  const chosen = entry.from === '' ? '' : `${entry.from} ${entry.measure}`
  return choice(chosen, [{ value: '', text: 'no: the value above' }, ...options], (value) => {
    const [from = '', measure = ''] = value.split(' ')
    live.change((state) => {
      const before = state.given[given.name] ?? EMPTY_GIVEN
      return { ...state, given: { ...state.given, [given.name]: { ...before, from, measure } } }
    })
  })
}

const givenFields = (live: Live, given: FormGiven): HTMLElement[] => {
  const known = cardValue(given, articleOf(live.state(), live.view.articles))
  const example = given.form === 'quantity' ? 'with ± and unit, as in 96.2 ± 0.6 L; (exact) where it is' : ''
  const help = [given.meaning, known ? `the card has ${known}` : '', example]
    .filter((each) => each !== '')
    .join('; ')
  return [
    labelled({ label: given.label, spot: `given.${given.name}`, help }, valueControl(live, given)),
    ...(given.form === 'quantity'
      ? [labelled({ label: `${given.label}, measured with` }, withControl(live, given))]
      : []),
    ...(given.results.length > 0
      ? [labelled({ label: `${given.label}, result of another run` }, resultControl(live, given))]
      : []),
  ]
}

/** What the card gives is shown; another value than the card's is a deviation that somebody has agreed. */
const otherGivens = (live: Live): HTMLElement | null => {
  const others = live.view.givens.filter((given) => !given.asked)
  if (others.length === 0) return null
  const rows = others.map((given) => {
    const holder = h('div')
    const open = (): void => holder.replaceChildren(...givenFields(live, given))
    if (live.state().given[given.name]) open()
    else holder.append(button(`Another ${given.label} on the day`, open))
    const values = Object.entries(given.card).map(([article, value]) =>
      article === '*' ? value : `${article}: ${value}`,
    )
    return h(
      'tr',
      {},
      h('th', { scope: 'row' }, given.label, h('small', {}, given.meaning)),
      h('td', {}, values.join('; ')),
      h('td', {}, holder),
    )
  })
  return h(
    'details',
    {},
    h('summary', {}, 'What the card gives'),
    h('p', {}, 'Another value than the card’s is a deviation: write it under “Deviations” and who agreed.'),
    h(
      'div',
      { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'Givens of the card' },
      h(
        'table',
        { class: 'scroll' },
        h('caption', { class: 'unseen' }, 'Givens of the card'),
        h('tbody', {}, ...rows),
      ),
    ),
  )
}

const zeroFields = (live: Live): HTMLElement[] =>
  live.view.columns
    .filter((column) => column.form === 'number' && column.instrument !== 'none' && !column.inside)
    .flatMap(({ name, label }) =>
      (['before', 'after'] as const).map((moment) => {
        const control = textInput(live.state().zero[name]?.[moment] ?? '', (text) =>
          live.change((state) => {
            const checks = state.zero[name] ?? { before: '', after: '' }
            return { ...state, zero: { ...state.zero, [name]: { ...checks, [moment]: text } } }
          }),
        )
        return labelled({ label: `${label}, ${moment}`, spot: `zero.${name}` }, control)
      }),
    )

const removedFields = (live: Live): HTMLElement | null => {
  const { fitted } = live.view
  if (fitted.length === 0) return null
  return tickList(
    { legend: 'Fitted in an earlier run, taken out now', spot: 'removed', wide: true },
    fitted.map(({ id, what }) => ({ value: id, text: `${what} (${id})` })),
    () => live.state().removed,
    (removed) => live.change((state) => ({ ...state, removed })),
  )
}

const ambientFields = (live: Live): HTMLElement[] => {
  const { ambient } = live.state()
  const put = (name: 'temperature' | 'note') => (text: string) =>
    live.change((state) => ({ ...state, ambient: { ...state.ambient, [name]: text } }))
  return [
    labelled(
      { label: 'Temperature of the place', spot: 'ambient.temperature', help: 'with its unit, as in 12 °C' },
      textInput(ambient.temperature, put('temperature')),
    ),
    labelled(
      { label: 'Note on the place', spot: 'ambient.note', help: 'doors, sun, wind', wide: true },
      textInput(ambient.note, put('note')),
    ),
  ]
}

/** What the card has depends on the article, and which instruments serve on the day: said anew where these change. */
const askedFields = (live: Live): HTMLElement => {
  const asked = live.view.givens.filter((given) => given.asked)
  const fields = h('div', { class: 'fields' })
  const draw = (): void => fields.replaceChildren(...asked.flatMap((given) => givenFields(live, given)))
  const keyOf = (): string => `${live.state().article} ${dayOf(live.state().when)}`
  drawnBy(live, fields, keyOf, draw)
  return fields
}

export const conditionsPart = (live: Live): HTMLElement => {
  const zeros = zeroFields(live)
  return part(
    'conditions',
    'Conditions of the day',
    live.view.givens.some((given) => given.asked) ? h('h3', {}, 'Measured on the day') : null,
    askedFields(live),
    h('div', { class: 'fields' }, ...ambientFields(live), removedFields(live)),
    otherGivens(live),
    zeros.length > 0
      ? h(
          'details',
          {},
          h('summary', {}, 'Zero checks: the unloaded reading before and after'),
          h('div', { class: 'fields' }, ...zeros),
        )
      : null,
    h('h3', {}, 'Fitted for the test, to come out again'),
    listEditor(live, {
      name: 'fitted',
      title: 'Fitted part',
      add: 'Add what was fitted',
      empty: { id: '', what: '' },
      fields: [
        { name: 'id', label: 'short name, as in vent-plug' },
        { name: 'what', label: 'what, and where', wide: true },
      ],
    }),
    h('h3', {}, 'Rig'),
    listEditor(live, {
      name: 'rig',
      title: 'Detail of the rig',
      add: 'Add a detail of the rig',
      empty: { name: '', value: '' },
      fields: [
        { name: 'name', label: 'what, as in relief' },
        { name: 'value', label: 'which', wide: true },
      ],
    }),
  )
}
