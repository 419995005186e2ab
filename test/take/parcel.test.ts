/** What was handed in, sorted out: which run, which files of it, where they go. */
import { describe, expect, it } from 'vitest'
import { namedFiles } from '../../src/take/named-files.ts'
import { sortOut } from '../../src/take/parcel.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)
const piece = (name: string, text = 'x') => ({ name, bytes: bytes(text) })

const RUN = `---
card: tank-leak
when: 2026-03-04T09:12+01:00
readings:
  file: 2026-03-04-0912-tank-leak.csv
files:
  - {file: 2026-03-04-0912-tank-leak-1.jpg, caption: the gauge}
  - {file: photos/rig.jpg, caption: the rig}
---
![soap](./soap.png) and \`![no](no.png)\`, ![away](https://example.org/x.png), ![again](soap.png)
`
const id = '2026-03-04-0912-tank-leak'
const folder = 'records/runs/2026-03/'

const placed = (...pieces: ReturnType<typeof piece>[]) => {
  const read = sortOut(pieces)
  if (!read.ok) throw new Error(read.error.join('\n'))
  return {
    runs: read.value.runs.map((run) => run.id),
    paths: read.value.runs.flatMap((run) => run.placements.map(({ path, what }) => `${path} ${what}`)),
    left: read.value.left,
    notes: read.value.notes,
  }
}

const faults = (...pieces: ReturnType<typeof piece>[]) => {
  const read = sortOut(pieces)
  return read.ok ? [] : read.error
}

describe('files that a run names', () => {
  it('are its data file, its files and the pictures in its prose, each once', () => {
    expect(namedFiles(RUN)).toEqual({
      names: [`${id}.csv`, `${id}-1.jpg`, 'photos/rig.jpg', 'soap.png'],
      data: `${id}.csv`,
    })
  })
  it('are none where the front matter cannot be read', () => {
    expect(namedFiles('no front matter')).toEqual({ names: [], data: null })
    expect(namedFiles('---\na: {\n---\n')).toEqual({ names: [], data: null })
    expect(namedFiles('---\nfiles: a word\nreadings: |\n  x\n---\n')).toEqual({ names: [], data: null })
  })
})

describe('what was handed in', () => {
  const whole = ['.md', '.csv', '-1.jpg'].map((ending) => `${id}${ending}`)
  it.each(['', 'records/runs/2026-03/', 'inbox/phone 2/'])('is placed by month, from %j', (from) => {
    const others = ['photos/rig.jpg', 'soap.png', 'holiday.jpg'].map((name) => piece(from + name))
    const [, data = '', photo = ''] = whole
    const result = placed(piece(`${from}${id}.md`, RUN), piece(from + data), piece(from + photo), ...others)
    expect(result).toEqual({
      runs: [id],
      paths: [
        `${folder}${id}.md run`,
        `${folder}${id}.csv data`,
        `${folder}${id}-1.jpg file`,
        `${folder}photos/rig.jpg file`,
        `${folder}soap.png file`,
      ],
      left: [`${from}holiday.jpg`],
      notes: [],
    })
  })

  it('takes its month from the time of the run, else from its name', () => {
    expect(placed(piece('2026-01-01-0000-x.md', RUN)).paths).toEqual([`${folder}2026-01-01-0000-x.md run`])
    expect(placed(piece(`${id}.md`, 'nothing')).paths).toEqual([`${folder}${id}.md run`])
    expect(faults(piece('x.md', 'nothing'))).toEqual([expect.stringContaining('says no time')])
  })

  it('may be two runs, each with its own', () => {
    const second = RUN.replaceAll(id, '2026-04-04-0912-tank-leak').replace('2026-03-04T', '2026-04-04T')
    const result = placed(
      piece(`${id}.md`, RUN),
      piece('2026-04-04-0912-tank-leak.md', second),
      piece('soap.png'),
    )
    expect(result.paths).toEqual([
      `${folder}${id}.md run`,
      `${folder}soap.png file`,
      'records/runs/2026-04/2026-04-04-0912-tank-leak.md run',
      'records/runs/2026-04/soap.png file',
    ])
  })

  it('is one run where the same file lies in it twice, and refused where the two differ', () => {
    expect(placed(piece(`a/${id}.md`, RUN), piece(`b/${id}.md`, RUN)).runs).toEqual([id])
    expect(faults(piece(`a/${id}.md`, RUN), piece(`b/${id}.md`, `${RUN}!`))).toEqual([
      `\`a/${id}.md\` and \`b/${id}.md\` would both become \`${folder}${id}.md\`, and they differ.`,
    ])
  })

  it('loses the number that a browser puts behind a second download', () => {
    const result = placed(piece(`${id} (1).md`, RUN))
    expect(result.runs).toEqual([id])
    expect(result.notes).toEqual([expect.stringContaining('without the number of the copy')])
  })

  it('is refused without a run, or under a name that is no id', () => {
    expect(faults(piece('README.md'), piece('a.jpg'))).toEqual([expect.stringContaining('no run in it')])
    expect(faults()).toEqual([expect.stringContaining('no run in it')])
    expect(faults(piece('Tank Leak.md', RUN))).toEqual([expect.stringContaining('`tank-leak.md`')])
  })

  it('takes nothing along that a run names outside its folder, nor another run as a picture', () => {
    const run = RUN.replace('photos/rig.jpg', '../../../package.json').replace('soap.png)', 'other.md)')
    const other = RUN.replace('2026-03-04T', '2026-03-05T')
    const result = placed(
      piece(`a/b/c/d/${id}.md`, run),
      piece('a/b/c/d/other.md', other),
      piece('a/package.json'),
    )
    expect(result.left).toEqual(['a/package.json'])
    expect(result.paths).toEqual([`${folder}${id}.md run`, `${folder}other.md run`])
  })
})
