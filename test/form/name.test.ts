/** What a run and its photos are called, whatever becomes of its time and article, and however often it is handed in. */
import { describe, expect, it } from 'vitest'
import { named, photoKey, photoName, runId } from '../../src/form/name.ts'
import { emptyRun, type RunState } from '../../src/form/state.ts'

const run: RunState = { ...emptyRun('tank-leak'), article: 'wing-left/tank', when: '2026-03-04T09:12+01:00' }
const id = runId(run)

describe('the name of a run', () => {
  it('stays what it was handed in as, when the cards of a later day know that run', () => {
    expect(runId(run, [id], id)).toBe(id)
    expect(runId(run, [id, `${id}-2`], `${id}-2`)).toBe(`${id}-2`)
  })
  it('stays what the opened file was called, where the run that it stands behind is not known here', () => {
    expect(runId(run, [], `${id}-2`)).toBe(`${id}-2`)
  })
  it('follows a time or an article that is put right later', () => {
    const later = { ...run, when: '2026-03-04T10:12+01:00' }
    expect(runId(later, [], id)).toBe(id.replace('0912', '1012'))
  })
  it('is not that of a file of any other name', () => {
    for (const other of ['draft', `${id}-x`, `${id}-1`, `${id} (1)`]) expect(runId(run, [], other)).toBe(id)
  })
})

describe('photos', () => {
  const files = [
    { file: `${id}-1.jpg`, caption: 'port' },
    { file: `${id}-2.png`, caption: 'gauge' },
    { file: 'sketch.pdf', caption: 'sketch' },
  ]
  const body = `See ![port](${id}-1.jpg) and sketch.pdf.`
  const data = { file: `${id}.csv`, columns: {} }
  const later = { ...run, when: '2026-03-04T10:12+01:00', files, body, data }
  const moved = named(later, id, runId(later))

  it('and data take the new name of their run; what had another name keeps it', () => {
    const next = id.replace('0912', '1012')
    expect(moved.files.map(({ file }) => file)).toEqual([`${next}-1.jpg`, `${next}-2.png`, 'sketch.pdf'])
    expect(moved.data?.file).toBe(`${next}.csv`)
    expect(moved.body).toBe(`See ![port](${next}-1.jpg) and sketch.pdf.`)
  })
  it('are found again in the browser under the key that they were put under', () => {
    const keys = (names: readonly { file: string }[], of: string) =>
      names.map(({ file }) => photoKey(of, file))
    expect(keys(moved.files, runId(moved))).toEqual(keys(files, id))
    expect(new Set(keys(files, id)).size).toBe(3)
  })
  it('get a number that no other has, also after the time was put right', () => {
    const used = moved.files.map(({ file }) => file)
    expect(photoName(runId(moved), 'IMG.JPEG', '', used)).toBe(`${runId(moved)}-3.jpg`)
  })
  it('have the ending of what they are, where their name does not say', () => {
    expect(photoName('r', 'image', 'image/png', [])).toBe('r-1.png')
    expect(photoName('r', 'scan', 'application/pdf', [])).toBe('r-1.pdf')
    expect(photoName('r', 'IMG.JPEG', 'image/jpeg', ['r-1.jpg'])).toBe('r-2.jpg')
  })
})
