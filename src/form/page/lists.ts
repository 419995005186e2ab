/** Lists whose entries are added and taken away: deviations, what was fitted, the rig. */
import { type RunState, replaced, without } from '../state.ts'
import { button, buttonTwice, choice, h, labelled, type Option, textInput } from './dom.ts'
import type { Live } from './live.ts'

/** Names of the state whose value is a list of such entries. */
type ListName = 'deviations' | 'fitted' | 'rig'

type Entry = Readonly<Record<string, string>>

type EntryOf<N extends ListName> = RunState[N][number]

type ListField<N extends ListName> = {
  readonly name: keyof EntryOf<N> & string
  readonly label: string
  readonly wide?: boolean
  readonly options?: readonly Option[]
}

export type ListOf<N extends ListName> = {
  readonly name: N
  /** Of one entry, for headings: `Deviation`. */
  readonly title: string
  readonly add: string
  readonly empty: EntryOf<N>
  readonly fields: readonly ListField<N>[]
}

export const listEditor = <N extends ListName>(live: Live, list: ListOf<N>): HTMLElement => {
  const box = h('div', { class: 'entries' })
  const read = (state: RunState): readonly Entry[] => state[list.name]
  const write = (state: RunState, entries: readonly Entry[]): RunState => ({ ...state, [list.name]: entries })
  const set = (index: number, entry: Entry): void =>
    live.change((state) => write(state, replaced(read(state), index, entry)))
  const control = (entry: Entry, index: number, field: ListField<N>) => {
    const put = (text: string): void =>
      set(index, { ...(read(live.state())[index] ?? entry), [field.name]: text })
    const value = entry[field.name] ?? ''
    return field.options ? choice(value, field.options, put) : textInput(value, put)
  }
  const entryBox = (entry: Entry, index: number): HTMLElement =>
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
      buttonTwice(
        `Remove ${list.title.toLowerCase()} ${index + 1}`,
        `Really remove ${list.title.toLowerCase()} ${index + 1}`,
        () => {
          live.change((state) => write(state, without(read(state), index)))
          render()
          box.querySelector<HTMLElement>(':scope > button')?.focus()
        },
      ),
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
