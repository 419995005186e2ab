/** What was seen and done: observations with their time, deviations, the test broken off, photos. */
import { clockText } from '../clock.ts'
import { observe } from '../observed.ts'
import { button, h, labelled, part, textInput } from './dom.ts'
import { listEditor } from './lists.ts'
import { type Live, nowAt } from './live.ts'
import { photosPart } from './photos.ts'
import type { Store } from './store.ts'

const observations = (live: Live): HTMLElement[] => {
  const area = h('textarea', { rows: 6 })
  area.value = live.state().body
  area.addEventListener('input', () => live.change((state) => ({ ...state, body: area.value })))
  // The tick for a paper sheet writes here as well.
  live.onChange((state) => {
    if (area.value !== state.body) area.value = state.body
  })
  const quick = textInput('', () => undefined, { enterkeyhint: 'done' })
  const note = (): void => {
    if (quick.value.trim() === '') return
    const line = `${clockText(nowAt(live), false)} ${quick.value}`
    live.change((state) => ({ ...state, body: observe(state.body, line) }))
    quick.value = ''
    live.say(`Noted: ${line}`)
  }
  quick.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') note()
  })
  return [
    h(
      'div',
      { class: 'fields' },
      labelled({ label: 'Observation', help: 'noted with the time of now', wide: true }, quick),
    ),
    button('Note it', note),
    labelled({ label: 'All that was seen, as it will stand in the record', spot: 'body', wide: true }, area),
  ]
}

const brokenOff = (live: Live): HTMLElement => {
  const box = h('input', { type: 'checkbox' })
  const why = textInput(live.state().stopped ?? '', (text) =>
    live.change((state) => ({ ...state, stopped: text })),
  )
  const field = labelled({ label: 'Why it was broken off', spot: 'stopped', wide: true }, why)
  box.checked = live.state().stopped !== null
  field.hidden = !box.checked
  box.addEventListener('change', () => {
    field.hidden = !box.checked
    live.change((state) => ({ ...state, stopped: box.checked ? why.value : null }))
    if (box.checked) why.focus()
  })
  return h('div', {}, h('label', { class: 'tick' }, box, 'The test was broken off'), field)
}

export const seenPart = (live: Live, store: Store): HTMLElement => {
  const agreed = [
    { value: '', text: 'nobody yet' },
    ...live.view.people.map(({ id, name }) => ({ value: id, text: name })),
  ]
  return part(
    'seen',
    'What was seen and done',
    ...observations(live),
    h('h3', {}, 'Deviations from the card'),
    listEditor(live, {
      name: 'deviations',
      title: 'Deviation',
      add: 'Add a deviation',
      empty: { from: '', what: '', why: '', agreed: '' },
      fields: [
        { name: 'from', label: 'from, as in step 4' },
        { name: 'what', label: 'what was done', wide: true },
        { name: 'why', label: 'why', wide: true },
        { name: 'agreed', label: 'agreed by', options: agreed },
      ],
    }),
    brokenOff(live),
    photosPart(live, store),
  )
}
