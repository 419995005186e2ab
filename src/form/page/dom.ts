/** Making and filling elements: the little that the form needs of a library. */
import type { OfferedInstrument } from '../fit.ts'

export type Child = Node | string | null | false | undefined

type Value = string | number | boolean | undefined | ((event: Event) => void)

const fill = (
  element: Element,
  attributes: Readonly<Record<string, Value>>,
  children: readonly Child[],
): void => {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(name, value)
    else if (value === true) element.setAttribute(name, '')
    else if (value !== false && value !== undefined) element.setAttribute(name, String(value))
  }
  element.append(
    ...children.filter(
      (child): child is Node | string => child !== null && child !== false && child !== undefined,
    ),
  )
}

/** Functions among the attributes are listeners of the event of that name. */
export const h = <K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, Value>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] => {
  const element = document.createElement(tag)
  fill(element, attributes, children)
  return element
}

export const svg = (
  tag: string,
  attributes: Readonly<Record<string, Value>> = {},
  ...children: readonly Child[]
): SVGElement => {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag)
  fill(element, attributes, children)
  return element
}

/** A sentence in which names stand between backticks. */
export const coded = (sentence: string): (Node | string)[] =>
  sentence.split('`').map((piece, at) => (at % 2 === 1 ? h('code', {}, piece) : piece))

let count = 0
/** An id that no other control of the page has. */
export const freshId = (): string => `control-${++count}`

export type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement

type Labelled = {
  readonly label: string
  /** What it is about, in small print. */
  readonly help?: string
  /** Name of the control for problems of the file. */
  readonly spot?: string
  readonly wide?: boolean
}

/** A control under its label, with room for what is wrong with it. */
export const labelled = ({ label, help, spot, wide }: Labelled, control: Control): HTMLElement => {
  const id = freshId()
  control.id = id
  control.setAttribute('aria-describedby', `${id}-help ${id}-fault`)
  return h(
    'div',
    { class: wide ? 'field wide' : 'field', 'data-spot': spot },
    h('label', { for: id }, label),
    control,
    help ? h('small', { id: `${id}-help` }, help) : h('small', { id: `${id}-help`, hidden: true }),
    h('p', { class: 'fault', id: `${id}-fault` }),
  )
}

export const textInput = (
  value: string,
  typed: (text: string) => void,
  more: Readonly<Record<string, Value>> = {},
): HTMLInputElement => {
  const input = h('input', { type: 'text', autocomplete: 'off', ...more })
  input.value = value
  input.addEventListener('input', () => typed(input.value))
  return input
}

export type Option = { readonly value: string; readonly text: string; readonly group?: string }

/** Options with a group stand under its name. */
export const choice = (
  value: string,
  options: readonly Option[],
  chosen: (value: string) => void,
): HTMLSelectElement => {
  const select = h('select')
  const groups = new Map<string, HTMLOptGroupElement>()
  for (const option of options) {
    const element = h('option', { value: option.value }, option.text)
    if (option.group === undefined) {
      select.append(element)
      continue
    }
    const group = groups.get(option.group) ?? h('optgroup', { label: option.group })
    if (!groups.has(option.group)) select.append(group)
    groups.set(option.group, group)
    group.append(element)
  }
  if (!options.some((option) => option.value === value)) select.prepend(h('option', { value }, value))
  select.value = value
  select.addEventListener('change', () => chosen(select.value))
  return select
}

type Ticks = { readonly legend: string; readonly spot: string; readonly wide?: boolean }

/** Several of a few: a box each. `chosen` is asked when a box is ticked, since another may have been meanwhile. */
export const tickList = (
  { legend, spot, wide }: Ticks,
  options: readonly Option[],
  chosen: () => readonly string[],
  put: (values: string[]) => void,
): HTMLElement => {
  const ticks = options.map(({ value, text }) => {
    const box = h('input', { type: 'checkbox' })
    box.checked = chosen().includes(value)
    box.addEventListener('change', () => {
      const others = chosen().filter((each) => each !== value)
      put(box.checked ? [...others, value] : others)
    })
    return h('label', { class: 'tick' }, box, text)
  })
  return h(
    'fieldset',
    { class: wide ? 'field wide' : 'field', 'data-spot': spot },
    h('legend', {}, legend),
    ...ticks,
    h('p', { class: 'fault' }),
  )
}

/** Instruments under the two heads of `groups`: those that fit, and the others. */
export const instrumentOptions = (
  instruments: readonly OfferedInstrument[],
  groups: readonly [string, string],
  none: string,
): Option[] => [
  { value: '', text: none },
  ...instruments.map(({ value, text, fits }) => ({ value, text, group: groups[fits ? 0 : 1] })),
]

export const button = (
  text: string,
  pressed: () => void,
  more: Readonly<Record<string, Value>> = {},
): HTMLButtonElement => h('button', { type: 'button', click: pressed, ...more }, text)

/** Two taps of one glove are one. */
const ONE_TAP = 400
const WAITS = 6000

/** What cannot be taken back is asked for twice at the same place; whoever goes elsewhere has not meant it. */
export const buttonTwice = (
  text: string,
  sure: string,
  pressed: () => void,
  more: Readonly<Record<string, Value>> = {},
): HTMLButtonElement => {
  const label = more['aria-label']
  let asked: number | null = null
  const show = (words: string, name: Value): void => {
    element.textContent = words
    element.classList.toggle('sure', asked !== null)
    if (typeof name === 'string') element.setAttribute('aria-label', name)
  }
  const reset = (): void => {
    asked = null
    show(text, label)
  }
  const element = button(text, () => undefined, more)
  element.addEventListener('click', ({ timeStamp }) => {
    if (asked === null) {
      asked = timeStamp
      show(sure, label === undefined ? undefined : sure)
      setTimeout(reset, WAITS)
    } else if (timeStamp - asked > ONE_TAP) pressed()
  })
  element.addEventListener('blur', reset)
  return element
}

export const part = (id: string, title: string, ...children: readonly Child[]): HTMLElement =>
  h('section', { id, 'aria-labelledby': `${id}-title` }, h('h2', { id: `${id}-title` }, title), ...children)
