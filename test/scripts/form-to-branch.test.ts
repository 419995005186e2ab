/**
 * The whole way of a run from the form: its state, packed as the form packs it, with a logger file and a photo; taken
 * into a repository as the command does; checked there. What was shown while it was recorded is what comes out.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { z } from 'zod'
import { openCampaign } from '../../src/campaign/node/open.ts'
import { plannedSchema } from '../../src/campaign/schema.ts'
import { archiveOf } from '../../src/form/archive.ts'
import { takeRun } from '../../src/form/desk.ts'
import { dataFields, lookAt } from '../../src/form/logger.ts'
import { runFolder, runId, runPath } from '../../src/form/name.ts'
import { previewRun } from '../../src/form/preview.ts'
import type { RunState } from '../../src/form/state.ts'
import { runText } from '../../src/form/write.ts'
import { decodePieces } from '../../src/format/logger/decode.ts'
import { checkSchema } from '../../src/views/check-schema.ts'
import { resultText } from '../../src/views/show.ts'
import { cardOf } from '../demo/harness.ts'
import { methods, pack } from '../form/demo.ts'
import { draw } from '../form/generate.ts'
import { type SmallRepository, smallRepository } from './small-repository.ts'

const DAY = '2026-04-19'
const card = cardOf('hull-bay-leak', 'hull/bay-2')
const fields = card.method ? plannedSchema(card.method, card.card).columns : []

let small: SmallRepository
beforeAll(() => {
  small = smallRepository()
})
afterAll(() => small.remove())

/** An invented afternoon, its readings as typed. */
const typed: RunState = draw(
  card,
  {
    seed: 12,
    note: 'door shut: no sun',
    rig: 'water column, opens at 2.8 kPa',
    what: 'plug in the drain',
    why: 'the "soak" was cut short',
    remark: 'quiet',
    body: '14:31 soap film stayed flat',
    deviates: true,
    fits: true,
    zero: false,
    warm: 12,
  },
  '2026-04-18T14:05+02:00',
)
const id = runId(typed)

/** The same readings as a logger of a German office writes them. */
const log = [
  'Logger 7;Halle 2',
  typed.columns.map(({ name }) => name).join(';'),
  typed.columns.map(({ unit }) => unit).join(';'),
  ...typed.rows.map((row) => row.map((cell) => cell.replace('.', ',')).join(';')),
].join('\r\n')

it('from the form to the branch: no remark, and the measures that were shown', async () => {
  const bytes = new TextEncoder().encode(log)
  const text = decodePieces([bytes])
  const found = lookAt(text, fields)
  expect(found.questions).toEqual([])
  const photo = await sharp({ create: { width: 64, height: 48, channels: 3, background: 'grey' } })
    .withExif({ IFD0: { Make: 'Invented' } })
    .jpeg()
    .toBuffer()
  const state: RunState = {
    ...typed,
    revision: small.git('rev-parse', 'main').trim(),
    data: dataFields(`${id}.csv`, found, found.chosen),
    files: [{ file: `${id}-1.jpg`, caption: 'the gauge, at the start' }],
  }
  const beside = { ...text, name: `${id}.csv` }
  const shown = previewRun(pack, methods, state, [], beside)
  expect(shown.findings).toEqual([])
  expect(shown.measures.length).toBeGreaterThan(5)

  const archive = archiveOf(
    [
      { name: `${id}.md`, bytes: new TextEncoder().encode(runText(state)) },
      { name: `${id}.csv`, bytes },
      { name: `${id}-1.jpg`, bytes: photo },
    ],
    runFolder(state),
  )
  const file = join(mkdtempSync(join(tmpdir(), 'handed-in-')), `${id}.zip`)
  writeFileSync(file, archive)
  const taken = small.command('take', [file])
  rmSync(dirname(file), { recursive: true })
  expect([taken.status, taken.stderr]).toEqual([0, ''])
  expect(taken.stdout).toContain(`${id}: ${shown.verdict}`)
  expect(small.git('branch', '--show-current').trim()).toBe(`take/${id}`)
  expect(small.git('status', '--porcelain')).toBe('')
  const named = ['-1.jpg', '.csv', '.md'].map((ending) => `${runFolder(state)}/${id}${ending}`)
  expect(small.git('show', '--name-only', '--format=', 'HEAD').trim().split('\n').sort()).toEqual(named)

  const checked = small.command('check', ['--json', '--as-of', DAY])
  const { problems, runs } = z.parse(checkSchema, JSON.parse(checked.stdout))
  expect(checked.status).toBe(0)
  expect(problems).toEqual([])
  expect(runs.find((run) => run.id === id)).toMatchObject({
    verdict: shown.verdict,
    provenance: { state: 'proposed' },
  })

  const { campaign } = await openCampaign(small.root, 'test', DAY)
  const run = campaign.runs.find((each) => each.id === id)
  const path = runPath(state)
  const inForm = takeRun(pack, methods, {
    path,
    text: runText(state),
    beside: [`${id}-1.jpg`],
    data: { ...text, path: path.replace(/md$/, 'csv') },
  })
  expect(run?.computed?.measures).toEqual(inForm.run?.computed?.measures)
  expect(run?.judgements).toEqual(inForm.run?.judgements)
  const results = Object.entries({ ...run?.computed?.measures, ...run?.computed?.derived }).flatMap(
    ([name, quantity]) => {
      const unit = run?.units[name]
      return unit ? [resultText(quantity, unit)] : []
    },
  )
  expect(shown.measures.map(({ result }) => result)).toEqual(results)
}, 120_000)
