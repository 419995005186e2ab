/** Photos and scans: kept in the browser, shown small, each with what is to be seen on it. */
import { PHOTO_TYPES, photoKey, photoName } from '../name.ts'
import { replaced, without } from '../state.ts'
import { buttonTwice, h, labelled, textInput } from './dom.ts'
import { drawnBy } from './draw.ts'
import type { Live } from './live.ts'
import type { Store } from './store.ts'

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`

const small = (text: string): HTMLElement => h('small', {}, text)

/** A picture keeps its memory no longer than until it is drawn. */
const pictureOf = (blob: Blob, alt: string): HTMLElement => {
  if (!blob.type.startsWith('image/')) return small('a document')
  const address = URL.createObjectURL(blob)
  const done = (): void => URL.revokeObjectURL(address)
  return h('img', { alt, width: 120, src: address, load: done, error: done })
}

const shown = async (live: Live, store: Store, file: string, caption: string): Promise<HTMLElement[]> => {
  const blob = await store.file(live.run().key, photoKey(live.id(), file)).catch(() => undefined)
  if (!blob)
    return [small('The photo itself is not in this browser: it does not go along when the run is handed in.')]
  const large = blob.size > live.view.mostBytes
  return [
    pictureOf(blob, caption || file),
    ...(large ? [small(`${megabytes(blob.size)}: it is made smaller when the run is taken in`)] : []),
  ]
}

const photoBox = (live: Live, store: Store, index: number, removed: () => void): HTMLElement => {
  const { file, caption } = live.state().files[index] ?? { file: '', caption: '' }
  const picture = h('div')
  void shown(live, store, file, caption).then((parts) => picture.replaceChildren(...parts))
  const input = textInput(caption, (text) =>
    live.change((state) => {
      const entry = state.files[index]
      return entry ? { ...state, files: replaced(state.files, index, { ...entry, caption: text }) } : state
    }),
  )
  const remove = (): void => {
    const key = photoKey(live.id(), file)
    live.change((state) => ({ ...state, files: without(state.files, index) }))
    removed()
    store.removeFile(live.run().key, key).catch(() => undefined)
  }
  return h(
    'fieldset',
    { class: 'entry', 'data-spot': `files.${index}` },
    h('legend', {}, file),
    picture,
    labelled({ label: `Caption of photo ${index + 1}: what is to be seen`, wide: true }, input),
    h('p', { class: 'fault' }),
    buttonTwice(`Remove ${file}`, `Really remove ${file}`, remove),
  )
}

/** Puts a photo beside the others, never in the place of one: another tab may have added one meanwhile. */
const keepPhoto = async (live: Live, store: Store, file: File): Promise<void> => {
  const passed: string[] = []
  for (;;) {
    const id = live.id()
    const used = [...live.state().files.map((each) => each.file), ...passed.map((key) => `${id}-${key}`)]
    const key = photoKey(id, photoName(id, file.name, file.type, used))
    if (await store.addFile(live.run().key, key, file)) {
      // The name of the run may be another by now.
      live.change((state) => ({
        ...state,
        files: [...state.files, { file: `${live.id()}-${key}`, caption: '' }],
      }))
      return
    }
    passed.push(key)
  }
}

export const photosPart = (live: Live, store: Store): HTMLElement => {
  const box = h('div', { class: 'entries' })
  const input = h('input', { type: 'file', accept: PHOTO_TYPES.join(','), multiple: true })
  const add = async (files: readonly File[]): Promise<void> => {
    for (const file of files) {
      try {
        await keepPhoto(live, store, file)
      } catch (error) {
        const why = error instanceof Error ? error.message : ''
        live.say(
          `${file.name} could not be kept (${why || 'the store is full'}): keep it on the phone.`,
          true,
        )
      }
    }
  }
  // One after the other, so that two that are chosen quickly get two names.
  let adding = Promise.resolve()
  input.addEventListener('change', () => {
    const files = [...(input.files ?? [])]
    input.value = ''
    adding = adding.then(() => add(files))
  })
  const namesOf = (): string =>
    live
      .state()
      .files.map(({ file }) => file)
      .join('\n')
  const draw = (): void =>
    box.replaceChildren(
      ...live.state().files.map((_, index) => photoBox(live, store, index, () => input.focus())),
    )
  drawnBy(live, box, namesOf, draw)
  return h(
    'div',
    {},
    h('h3', {}, 'Photos'),
    box,
    labelled({ label: 'Add photos', help: 'they stay in this browser until the run is handed in' }, input),
  )
}
