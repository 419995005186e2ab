/** Names of handed-in files: which are refused because they mean harm or cannot live on every system, which are no concern. */

const LONGEST_NAME = 200
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i
// What turns the direction of writing makes `gpj.exe` look like `exe.jpg`.
const TURNING = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/

const isControl = (text: string): boolean =>
  Array.from(text).some((sign) => sign < ' ' || (sign >= '\u007f' && sign < '\u00a0'))

/** Why a file of this name is not taken; null where it may be. Names are relative, with forward slashes. */
export const nameFault = (name: string): string | null => {
  const steps = name.replace(/\/$/, '').split('/')
  if (isControl(name) || TURNING.test(name)) return 'its name holds signs that cannot be seen'
  if (name.includes('\\')) return 'its name holds a backslash'
  if (name.startsWith('/') || /^[A-Za-z]:/.test(name))
    return 'its name is a place on a machine, not in an archive'
  if (steps.includes('..')) return 'its name leads out of the archive'
  if (steps.includes('') || steps.includes('.')) return 'its name has an empty step'
  if (/[<>:"|?*]/.test(name)) return 'its name holds signs that not every system takes: < > : " | ? *'
  if (steps.some((step) => /[. ]$/.test(step))) return 'a step of its name ends with a dot or a blank'
  if (steps.some((step) => DEVICE.test(step))) return 'its name is that of a device on some systems'
  return new TextEncoder().encode(name).length > LONGEST_NAME ? 'its name is too long' : null
}

/** What file managers leave behind: not taken, and not worth a word. */
export const isLitter = (name: string): boolean =>
  name.split('/').some((step) => {
    const hidden = step.startsWith('.') && step !== '.' && step !== '..'
    return hidden || step === '__MACOSX' || /^(?:thumbs\.db|desktop\.ini)$/i.test(step)
  })

/** Names that some systems would take for one file. */
export const caseDoubles = (names: Iterable<string>): readonly (readonly string[])[] => {
  const groups = new Map<string, string[]>()
  for (const name of names) {
    const key = name.normalize('NFC').toLowerCase()
    groups.set(key, [...(groups.get(key) ?? []), name])
  }
  return [...groups.values()].filter((group) => group.length > 1)
}
