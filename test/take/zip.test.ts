/** The directory of an archive: what other programs write is read, what means harm or is damaged is refused. */
import { zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { readZip } from '../../src/take/zip.ts'

const LIMITS = { entries: 5, entryBytes: 1000, allBytes: 2000 }
const text = (written: string): Uint8Array => new TextEncoder().encode(written)

/** Made with the zipfile module of Python 3: a folder, a stored entry, a deflated one, names in UTF-8. */
const FROM_PYTHON =
  'UEsDBBQAAAgAAIBJZFwAAAAAAAAAAAAAAAAHAAAATMOkdWZlL1BLAwQUAAAIAACASWRcWu+L+ggAAAAIAAAACwAAAEzDpHVm' +
  'ZS9hLm1kLS0tCi0tLQpQSwMEFAAACAgAgElkXPZ8BvANAAAAIAMAAAwAAABMw6R1ZmUvYi5jc3YztDbiMhzFo3gUY8UAUEsB' +
  'AhQDFAAACAAAgElkXAAAAAAAAAAAAAAAAAcAAAAAAAAAAAAQAO1BAAAAAEzDpHVmZS9QSwECFAMUAAAIAACASWRcWu+L+ggA' +
  'AAAIAAAACwAAAAAAAAAAAAAApIElAAAATMOkdWZlL2EubWRQSwECFAMUAAAICACASWRc9nwG8A0AAAAgAwAADAAAAAAAAAAA' +
  'AAAApIFWAAAATMOkdWZlL2IuY3N2UEsFBgAAAAADAAMAqAAAAI0AAAAAAA=='

const fault = (bytes: Uint8Array, limits = LIMITS): string => {
  const read = readZip(bytes, limits)
  return read.ok ? 'none' : read.error
}

/** The archive with some of its bytes changed, counted from where the signature stands. */
const patched = (
  bytes: Uint8Array,
  signature: number,
  ...changes: readonly (readonly [number, number])[]
) => {
  const copy = bytes.slice()
  const view = new DataView(copy.buffer)
  for (let at = 0; at + 4 <= copy.length; at += 1) {
    if (view.getUint32(at, true) !== signature) continue
    for (const [offset, byte] of changes) view.setUint8(at + offset, byte)
    return copy
  }
  throw new Error('there is no such header')
}

const END = 0x06054b50
const CENTRAL = 0x02014b50
const LOCAL = 0x04034b50
const small = zipSync({ 'a.md': text('---') })

describe('an archive', () => {
  it('of another program is read: folders, names, sizes, what is packed', () => {
    const read = readZip(new Uint8Array(Buffer.from(FROM_PYTHON, 'base64')), LIMITS)
    expect(read.ok && read.value.map(({ name, is, deflated, size }) => [name, is, deflated, size])).toEqual([
      ['Läufe/', 'folder', false, 0],
      ['Läufe/a.md', 'file', false, 8],
      ['Läufe/b.csv', 'file', true, 800],
    ])
  })

  it('may be empty, and may carry a comment', () => {
    expect(readZip(zipSync({}), LIMITS)).toEqual({ ok: true, value: [] })
    const commented = new Uint8Array([...patched(small, END, [20, 3]), ...text('abc')])
    expect(fault(commented)).toBe('none')
  })

  it('has its names in composed letters, however they were typed', () => {
    const read = readZip(zipSync({ 'fu\u0308r.jpg': text('x') }), LIMITS)
    expect(read.ok && read.value[0]?.name).toBe('für.jpg')
  })

  it('is refused with the reason where it is no archive, or damaged', () => {
    expect(fault(text('no archive at all'))).toBe('it is no zip archive')
    expect(fault(new Uint8Array())).toBe('it is no zip archive')
    expect(fault(small.slice(0, -5))).toMatch('cut off')
    expect(fault(new Uint8Array([...text('put before'), ...small]))).toMatch('something was put before it')
    expect(fault(patched(small, CENTRAL, [0, 0]))).toBe('its directory is damaged')
    expect(fault(patched(small, CENTRAL, [28, 200]))).toBe('its directory is damaged')
    expect(fault(patched(small, LOCAL, [0, 0]))).toBe('the beginning of `a.md` is damaged')
    expect(fault(patched(small, CENTRAL, [20, 250]))).toBe('`a.md` is cut off')
  })

  it('is refused where an entry is encrypted, a link, no ordinary file, or packed otherwise', () => {
    expect(fault(patched(small, CENTRAL, [8, 1]))).toMatch('`a.md` is encrypted')
    const link = zipSync({ 'a.md': [text('/etc/passwd'), { os: 3, attrs: (0o120777 << 16) >>> 0 }] })
    expect(fault(link)).toMatch('`a.md` is a link')
    const pipe = zipSync({ 'a.md': [text(''), { os: 3, attrs: (0o010644 << 16) >>> 0 }] })
    expect(fault(pipe)).toMatch('no ordinary file')
    // 12 is bzip2 in the list of methods of the format.
    expect(fault(patched(small, CENTRAL, [10, 12]))).toMatch('packed in a way that is not read here (12)')
  })

  it('is refused where it is of a form that is not read: several volumes, 64-bit', () => {
    expect(fault(patched(small, END, [4, 1]))).toMatch('several volumes')
    expect(fault(patched(small, END, [8, 0xff], [9, 0xff], [10, 0xff], [11, 0xff]))).toMatch('64-bit')
  })

  it('is refused where a name is not UTF-8, and shows its bytes', () => {
    // 0x84 is an umlaut in an old code page of that time, and no beginning of a letter in UTF-8.
    const foreign = patched(patched(small, LOCAL, [30, 0x84]), CENTRAL, [46, 0x84])
    expect(fault(foreign)).toMatch('the name `\\x84.md` is not UTF-8')
  })

  it('is refused where the two names of an entry differ', () => {
    expect(fault(patched(small, LOCAL, [30, 0x62]))).toMatch('`a.md` has two names')
  })

  it('is refused where it would unpack to more than is sensible, before anything is unpacked', () => {
    expect(fault(zipSync({ 'a.csv': new Uint8Array(1001) }))).toBe(
      '`a.csv` would be 0.1 MB, at most 0.1 MB are taken',
    )
    const many = Object.fromEntries(Array.from({ length: 6 }, (_, index) => [`${index}.csv`, text('')]))
    expect(fault(zipSync(many))).toBe('it holds 6 entries, at most 5 are taken')
    const heavy = Object.fromEntries(
      Array.from({ length: 3 }, (_, index) => [`${index}.csv`, new Uint8Array(900)]),
    )
    expect(fault(zipSync(heavy))).toMatch('it would unpack to')
  })

  it('is refused where entries share their bytes, as in archives that unpack to mountains', () => {
    const two = zipSync({ 'a.md': text('same'), 'b.md': text('same') })
    const view = new DataView(two.buffer)
    const second = two.length - 22 - 50
    expect(view.getUint32(second, true)).toBe(CENTRAL)
    // The second entry of the directory points at the first file, under its name.
    const shared = two.slice()
    new DataView(shared.buffer).setUint32(second + 42, 0, true)
    shared[second + 46] = 'a'.charCodeAt(0)
    expect(fault(shared)).toMatch('lies over another entry')
  })
})
