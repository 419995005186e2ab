/** Making and filling elements: the little that the form needs of a library. */

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

export const button = (
  text: string,
  pressed: () => void,
  more: Readonly<Record<string, Value>> = {},
): HTMLButtonElement => h('button', { type: 'button', click: pressed, ...more }, text)

export const part = (id: string, title: string, ...children: readonly Child[]): HTMLElement =>
  h('section', { id, 'aria-labelledby': `${id}-title` }, h('h2', { id: `${id}-title` }, title), ...children)
