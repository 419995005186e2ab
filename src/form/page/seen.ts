/** What was seen and done: observations with their time, deviations, the test broken off, photos. */
import { clockText } from '../clock.ts'
import { photoName, runId } from '../name.ts'
import { observe } from '../observed.ts'
import { replaced, without } from '../state.ts'
import { button, h, labelled, part, textInput } from './dom.ts'
import { listEditor } from './lists.ts'
import { type Live, now } from './live.ts'
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
    const line = `${clockText(now(), false)} ${quick.value}`
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

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`

const photoBox = (live: Live, store: Store, index: number, render: () => void): HTMLElement => {
  const { file, caption } = live.state().files[index] ?? { file: '', caption: '' }
  const picture = h('img', { alt: caption || file, width: 120 })
  void store.file(live.run().key, file).then((blob) => {
    if (!blob) return picture.replaceWith(h('small', {}, 'the photo itself is not in this browser'))
    picture.src = URL.createObjectURL(blob)
    const large = blob.size > live.view.mostBytes
    if (large)
      picture.after(h('small', {}, `${megabytes(blob.size)}: it is made smaller when the run is taken in`))
  })
  const input = textInput(caption, (text) =>
    live.change((state) => ({ ...state, files: replaced(state.files, index, { file, caption: text }) })),
  )
  return h(
    'fieldset',
    { class: 'entry', 'data-spot': `files.${index}` },
    h('legend', {}, file),
    picture,
    labelled({ label: 'Caption: what is to be seen', wide: true }, input),
    h('p', { class: 'fault' }),
    button(`Remove ${file}`, () => {
      live.change((state) => ({ ...state, files: without(state.files, index) }))
      void store.removeFile(live.run().key, file)
      render()
    }),
  )
}

const photos = (live: Live, store: Store): HTMLElement => {
  const box = h('div', { class: 'entries' })
  const input = h('input', { type: 'file', accept: 'image/jpeg,image/png,application/pdf', multiple: true })
  const add = async (chosen: readonly File[]): Promise<void> => {
    for (const file of chosen) {
      const state = live.state()
      const name = photoName(
        runId(state, live.view.taken),
        file.name,
        state.files.map((each) => each.file),
      )
      try {
        await store.putFile(live.run().key, name, file)
        live.change((before) => ({ ...before, files: [...before.files, { file: name, caption: '' }] }))
      } catch (error) {
        const why = error instanceof Error ? error.message : ''
        live.say(
          `${file.name} could not be kept (${why || 'the store is full'}): keep it on the phone.`,
          true,
        )
      }
    }
    input.value = ''
    render()
  }
  input.addEventListener('change', () => void add([...(input.files ?? [])]))
  const render = (): void =>
    box.replaceChildren(...live.state().files.map((_, index) => photoBox(live, store, index, render)))
  render()
  return h(
    'div',
    {},
    h('h3', {}, 'Photos'),
    box,
    labelled({ label: 'Add photos', help: 'they stay in this browser until the run is handed in' }, input),
  )
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
    listEditor(
      live,
      {
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
      },
      (state) => state.deviations,
      (state, deviations) => ({ ...state, deviations }),
    ),
    brokenOff(live),
    photos(live, store),
  )
}
