/** Colours of a terminal; the words alone say everything. */

const CODES: Readonly<Record<string, string>> = {
  pass: '32',
  fail: '31;1',
  undetermined: '33',
  'due-again': '35',
  conceded: '36',
}

export type Paint = (name: string, text: string) => string

export const painter =
  (colour: boolean): Paint =>
  (name, text) => {
    const code = CODES[name]
    return colour && code ? `\u001b[${code}m${text}\u001b[0m` : text
  }
