/** What both fields of the card are read with. */
import type { Plain } from '../../format/types.ts'
import type { Fault } from '../../quantity/types.ts'

export type PathFault = Fault & { path: readonly (string | number)[] }

const NAME = /^[a-z][a-z0-9_]*$/

/** `constructor` is a name that every object of the language has already. */
export const isName = (text: string): boolean => NAME.test(text) && !Object.hasOwn(Object.prototype, text)

export const isMap = (raw: Plain | undefined): raw is { readonly [key: string]: Plain } =>
  typeof raw === 'object' && !Array.isArray(raw)

export const isYesNo = (raw: Plain | undefined): raw is 'yes' | 'no' => raw === 'yes' || raw === 'no'

/** A list of texts; null where it is something else. */
export const texts = (raw: Plain): readonly string[] | null =>
  Array.isArray(raw) && raw.length > 0 && raw.every((each) => typeof each === 'string')
    ? (raw as readonly string[])
    : null
