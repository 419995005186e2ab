/** The cases of a method's folder through the whole pipeline: files in, verdict and problems out. */
import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { computeCampaign } from '../../src/campaign/compute.ts'
import { readRecords, type TextFile } from '../../src/format/records.ts'
import type { Method } from '../../src/methods/method.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'

type Expectation = { verdict: string | null; problems: string[]; reason?: string }

const instrumentText = (kind: string, fields: string): string =>
  `---\ntitle: Invented\nkind: ${kind}\nserial: X-1\n${fields}\ncalibrations:\n  - {on: 2026-01-10, due: 2027-01-10, by: invented, certificate: none}\n---\nInvented.\n`

const BASE: Readonly<Record<string, string>> = {
  'shared/campaign.yaml':
    'title: Invented\npurpose: To test one method\nmain: main\ntimezone: Europe/Zurich\nrule: guarded 95 %\nreview: [trailer]\nfiles: {size: 8 MB, kinds: [jpg]}\n',
  'shared/people.yaml': 'moduya:\n  name: M. Oduya\n  emails: [m.oduya@example.org]\n  roles: [record]\n',
  'shared/articles/aircraft.md': '---\ntitle: Aircraft\nparts: [rudder, tank]\n---\n',
  'shared/articles/elevator.md': '---\ntitle: Elevator circuit\nparts: [rod]\n---\n',
  'shared/articles/wing-left.md': '---\ntitle: Left wing\nparts: [tip]\n---\n',
  'shared/articles/wing-left/tank.md': '---\ntitle: Left tank\nparts: [skin]\n---\n',
}

/** Instruments of the cases: id → kind and fields of its file. */
export type CaseInstruments = Readonly<Record<string, readonly [kind: string, fields: string]>>

/** The files of one case, and the campaign that they make. */
export const casesOf = (method: Method, instruments: CaseInstruments) => {
  const folder = new URL(`../../src/methods/${method.id}/cases/`, import.meta.url)
  const base = [
    ...Object.entries(BASE),
    ...Object.entries(instruments).map(([id, [kind, fields]]) => [
      `shared/instruments/${id}.md`,
      instrumentText(kind, fields),
    ]),
  ].map(([path = '', text = '']) => ({ path, text }))
  const filesOf = (name: string): TextFile[] => [
    ...base,
    ...readdirSync(new URL(`${name}/`, folder)).map((file) => ({
      path: /^\d/.test(file) ? `records/runs/${file.slice(0, 7)}/${file}` : `shared/cards/${file}`,
      text: readFileSync(new URL(`${name}/${file}`, folder), 'utf8'),
    })),
  ]
  const campaignOf = (files: readonly TextFile[]) => {
    const methods = { [method.id]: method }
    const { records, problems } = readRecords(files, methods)
    return computeCampaign({
      records,
      problems,
      methods,
      functions: {},
      asOf: '2026-03-05',
      tool: 'test',
    })
  }
  return { folder, filesOf, campaignOf }
}

/** Runs every case of the folder. */
export const testCases = (method: Method, instruments: CaseInstruments): void => {
  const { folder, filesOf, campaignOf } = casesOf(method, instruments)
  const expected: Record<string, Expectation> = JSON.parse(
    readFileSync(new URL('expect.json', folder), 'utf8'),
  )

  beforeAll(() => prepareFormulas())

  test('every case says what is expected of it', () => {
    const folders = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
    expect(folders.map((entry) => entry.name).sort()).toEqual(Object.keys(expected).sort())
  })

  describe.each(Object.entries(expected))('%s', (name, { verdict, problems: codes, reason }) => {
    test(`is ${verdict}`, () => {
      const campaign = campaignOf(filesOf(name))
      const found = campaign.problems.map(
        ({ code, message, at }) => `${at.file}:${at.line} ${code}: ${message}`,
      )
      expect(
        campaign.problems.map(({ code }) => code),
        found.join('\n'),
      ).toEqual(codes)
      const [run] = campaign.runs
      expect(run?.verdict ?? null, run?.reasons.join('; ')).toBe(verdict)
      if (reason) expect(run?.reasons.join(' ')).toContain(reason)
    })
  })
}
