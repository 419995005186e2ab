/** Readings that a logger has written into a file: looked at, its columns chosen, and taken along beside the run. */
import { type ChosenColumn, dataEnding, dataFields, type FileFound, foundAgain } from '../logger.ts'
import type { RunState } from '../state.ts'
import type { FormColumn } from '../view.ts'
import { button, buttonTwice, choice, h, labelled, textInput } from './dom.ts'
import type { Live } from './live.ts'
import { DATA, type Store } from './store.ts'

const NONE: ChosenColumn = { from: '', unit: '', format: '' }

const columnWords = ({ from, name, number, unit, kind }: FileFound['columns'][number]): string =>
  `${name || `column ${number}`}${unit && !name.includes(unit) ? `, ${unit}` : ''} (${kind})${from === name || from === String(number) ? '' : ` ${from}`}`

/** Told of all rows, so only to whoever opens it. */
const fileInside = (live: Live): HTMLElement => {
  const lines = h('pre', { tabindex: 0, 'aria-label': 'What is in the file' }, 'Looking at all of it …')
  const inside = h('details', {}, h('summary', {}, 'What is in the file'), lines)
  const fill = async (): Promise<void> => {
    lines.textContent = (await live.fileLines()).join('\n')
  }
  const failed = (error: unknown): void => {
    lines.textContent = `It could not be read: ${String(error)}`
  }
  inside.addEventListener('toggle', () => void fill().catch(failed), { once: true })
  return inside
}

/** Which column of the file is which of ours, and how it is read. */
const chooser = (live: Live, found: FileFound, ending: string, before: RunState['data']): HTMLElement => {
  let { chosen } = found
  let { decimal } = found
  const write = (): void => {
    const file = `${live.id()}.${ending}`
    live.change((state) => ({
      ...state,
      data: dataFields(file, { ...found, decimal }, chosen, before ?? {}),
    }))
  }
  const set = (name: string, more: Partial<ChosenColumn>): void => {
    chosen = { ...chosen, [name]: { ...(chosen[name] ?? NONE), ...more } }
    write()
  }
  const rowOf = ({ name, label, meaning }: FormColumn): HTMLElement => {
    const how = h('div', { class: 'how' })
    const render = (): void => {
      const { from, unit, format } = chosen[name] ?? NONE
      const column = found.columns.find((each) => each.from === from)
      how.replaceChildren()
      if (!column) return
      if (column.kind !== 'time') {
        how.append(
          labelled(
            { label: `Unit of ${label} in the file` },
            textInput(unit, (text) => set(name, { unit: text.trim() })),
          ),
        )
        return
      }
      const formats = [
        { value: '', text: 'say which' },
        ...column.formats.map((each) => ({ value: each, text: each })),
      ]
      how.append(
        labelled(
          { label: `How ${label} is written` },
          choice(format, formats, (value) => set(name, { format: value })),
        ),
      )
    }
    const options = [
      { value: '', text: 'not in the file' },
      ...found.columns
        .filter(({ kind }) => kind !== 'empty')
        .map((each) => ({ value: each.from, text: columnWords(each) })),
    ]
    const select = choice(chosen[name]?.from ?? '', options, (from) => {
      const column = found.columns.find((each) => each.from === from)
      const [only, second] = column?.formats ?? []
      set(name, {
        from,
        unit: column?.kind === 'words' ? 'text' : (column?.unit ?? ''),
        format: second === undefined ? (only ?? '') : '',
      })
      render()
    })
    render()
    return h(
      'div',
      { class: 'field' },
      labelled({ label: `Column for ${label}`, spot: `readings.columns.${name}`, help: meaning }, select),
      how,
    )
  }
  const signs = [
    { value: '', text: 'say which' },
    { value: '.', text: 'point' },
    { value: ',', text: 'comma' },
  ]
  const sign = choice(decimal, signs, (value) => {
    decimal = value === '.' || value === ',' ? value : ''
    write()
  })
  write()
  const fields = live.view.columns.filter((column) => !column.inside && !column.name.includes('<'))
  return h(
    'div',
    {},
    ...found.questions.map((question) => h('p', { class: 'fault' }, question)),
    h(
      'div',
      { class: 'fields' },
      labelled({ label: 'Decimal sign of the file', spot: 'readings.decimal' }, sign),
      ...fields.map(rowOf),
    ),
    fileInside(live),
  )
}

export const dataFilePart = (live: Live, store: Store): HTMLElement => {
  const input = h('input', { type: 'file', accept: '.csv,.txt,.tsv,.dat,.log,text/*' })
  const state = h('div')
  const columns = h('div')
  const render = (): void => {
    const { data } = live.state()
    state.replaceChildren()
    if (!data) return
    const typed = (): void => {
      live.change((before) => ({ ...before, data: null }))
      store.removeFile(live.run().key, DATA).catch(() => undefined)
      columns.replaceChildren()
      render()
    }
    state.append(
      h('p', {}, `The readings lie in ${String(data.file)}; the table above is not used.`),
      ...(columns.childElementCount === 0
        ? [button('Choose its columns again', () => void again().catch(failed(String(data.file))))]
        : []),
      buttonTwice('Type the readings instead', 'Really leave the file out: it goes from this browser', typed),
    )
  }
  const failed = (name: string) => (error: unknown) => {
    columns.replaceChildren()
    live.say(`${name} could not be read: ${error instanceof Error ? error.message : String(error)}`, true)
  }
  const show = (found: FileFound, name: string, before: RunState['data']): void => {
    if (found.columns.length > 0) columns.replaceChildren(chooser(live, found, dataEnding(name), before))
    else columns.replaceChildren(...found.questions.map((question) => h('p', { class: 'fault' }, question)))
    render()
  }
  const looking = (name: string): void =>
    columns.replaceChildren(h('p', { role: 'status' }, `Looking at ${name} …`))
  /** The file that is kept, with its columns as they were chosen before the page was left. */
  const again = async (): Promise<void> => {
    const { data } = live.state()
    const blob = await store.file(live.run().key, DATA)
    if (!data || !blob) throw new Error('it is not in this browser')
    looking(String(data.file))
    show(foundAgain(await live.lookAt(blob), data), String(data.file), data)
  }
  const take = async (file: File): Promise<void> => {
    looking(file.name)
    const keep = store.putFile(live.run().key, DATA, file).catch(() => {
      live.say(`${file.name} could not be kept: the store of this browser is full or blocked.`, true)
    })
    // The run does not speak of the file before it is kept.
    const [found] = await Promise.all([live.lookAt(file), keep])
    if (input.files?.[0] === file) show(found, file.name, null)
  }
  input.addEventListener('change', () => {
    const [file] = input.files ?? []
    if (!file) return
    take(file).catch(failed(file.name))
  })
  render()
  return h(
    'details',
    {},
    h('summary', {}, 'Take the readings from a logger file'),
    labelled(
      { label: 'Logger file', spot: 'readings', help: 'as the logger or a spreadsheet wrote it' },
      input,
    ),
    state,
    columns,
  )
}
