/** Lists whose entries are added and taken away: deviations, what was fitted, the rig. */
import { type RunState, replaced, without } from '../state.ts'
import { button, choice, h, labelled, type Option, textInput } from './dom.ts'
import type { Live } from './live.ts'

type ListField<T> = {
  readonly name: keyof T & string
  readonly label: string
  readonly wide?: boolean
  readonly options?: readonly Option[]
}

type Entry = Readonly<Record<string, string>>

/** Names of the state whose value is a list of such entries. */
type ListName = 'deviations' | 'fitted' | 'rig'

export type ListOf<T> = {
  readonly name: ListName
  /** Of one entry, for headings: `Deviation`. */
  readonly title: string
  readonly add: string
  readonly empty: T
  readonly fields: readonly ListField<T>[]
}

/** `read` and `write` keep the types of the list together. */
export const listEditor = <T extends Entry>(
  live: Live,
  list: ListOf<T>,
  read: (state: RunState) => readonly T[],
  write: (state: RunState, entries: readonly T[]) => RunState,
): HTMLElement => {
  const box = h('div', { class: 'entries' })
  const set = (index: number, entry: T): void =>
    live.change((state) => write(state, replaced(read(state), index, entry)))
  const control = (entry: T, index: number, field: ListField<T>) => {
    const put = (text: string): void =>
      set(index, { ...(read(live.state())[index] ?? entry), [field.name]: text })
    const value = entry[field.name] ?? ''
    return field.options ? choice(value, field.options, put) : textInput(value, put)
  }
  const entryBox = (entry: T, index: number): HTMLElement =>
    h(
      'fieldset',
      { class: 'entry', 'data-spot': `${list.name}.${index}` },
      h('legend', {}, `${list.title} ${index + 1}`),
      h(
        'div',
        { class: 'fields' },
        ...list.fields.map((field) =>
          labelled({ label: field.label, wide: field.wide }, control(entry, index, field)),
        ),
      ),
      h('p', { class: 'fault' }),
      button(`Remove ${list.title.toLowerCase()} ${index + 1}`, () => {
        live.change((state) => write(state, without(read(state), index)))
        render()
      }),
    )
  const render = (): void => {
    box.replaceChildren(
      ...read(live.state()).map(entryBox),
      button(list.add, () => {
        live.change((state) => write(state, [...read(state), list.empty]))
        render()
        box.querySelector<HTMLElement>('fieldset:last-of-type input')?.focus()
      }),
    )
  }
  render()
  return box
}
