import { existsSync } from 'node:fs'
import { basename, resolve } from 'node:path'
import { loadRecords } from '../src/format/node/load.ts'
import type { CampaignSettings } from '../src/format/types.ts'
import { loadMethods } from '../src/methods/registry.ts'
import { printTerminal } from '../src/problems/printers/terminal.ts'
import { prepareFormulas } from '../src/quantity/formula/index.ts'
import { type Parcel, type Placement, sortOut } from '../src/take/parcel.ts'
import { complain, readCall, rootOf, tool } from './command.ts'
import { type Checked, checkWith } from './take/check.ts'
import { lookAt } from './take/on-disk.ts'
import { type Fitted, fitFile } from './take/pictures.ts'
import { type Outcome, type PlaceOptions, place } from './take/place.ts'
import { runLine } from './take/said.ts'
import { piecesOf } from './take/unpack.ts'

const HELP = `npm run take -- <archive.zip or run.md> [options]     brings a handed-in run into the repository

  --branch NAME     the branch to make (take/<run>)
  --no-commit       only put the files in their place
  --keep-going      take it with its errors too, to be mended on the branch
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --help            this text

The run goes into the folder of its month, with its data file and the photos that it names; large photos are made
smaller, and the position and other data of the camera are taken out. It is checked with all other records before
anything is written. Then a branch, and a commit a run, of these files only. Nothing is ever overwritten.
Exit status: 0 taken, or there already; 1 not taken, with the reason; 2 wrong call.
`

type Options = PlaceOptions & { readonly keepGoing: boolean }

const CONFLICT = [
  'Nothing was taken. Another run of the same minute needs names of its own, as in `…-2.md`. If it is the same run',
  'mended, change the file in the repository by hand, with an amendment where it has landed.',
]

const refused = (...lines: string[]): Outcome => ({ taken: false, lines })

/** Each place once: two runs may name one photo. */
const placesOf = ({ runs }: Parcel): Placement[] => [
  ...new Map(runs.flatMap(({ placements }) => placements).map((each) => [each.path, each])).values(),
]

const warn = (line: string): void => {
  process.stderr.write(`${line}\n`)
}

const printProblems = ({ problems, textOf }: Checked): boolean => {
  const colour = process.stderr.isTTY === true && !process.env.NO_COLOR
  for (const problem of problems) warn(`${printTerminal(problem, textOf, { colour })}\n`)
  return problems.some(({ severity }) => severity === 'error')
}

const fitAll = async (placements: readonly Placement[], limits: CampaignSettings['files']) => {
  const fitted: Fitted[] = []
  const faults: string[] = []
  // One after the other: the photo of a phone, unpacked, is a hundred megabytes.
  for (const placement of placements) {
    const done = await fitFile(placement, limits)
    if (done.ok) fitted.push(done.value)
    else faults.push(done.error)
  }
  return { fitted, faults }
}

const take = async (file: string, root: string, options: Options): Promise<Outcome> => {
  const pieces = piecesOf(file)
  if (!pieces.ok) return refused(...pieces.error)
  const sorted = sortOut(pieces.value)
  if (!sorted.ok) return refused(...sorted.error)
  const parcel = sorted.value
  const [methods] = await Promise.all([loadMethods(), prepareFormulas()])
  const loaded = loadRecords(root, methods)
  const { fitted, faults } = await fitAll(placesOf(parcel), loaded.records.settings.files)
  if (faults.length > 0) return refused(...faults)
  const placements = fitted.map(({ placement }) => placement)
  const { other } = lookAt(root, placements, loaded.exists)
  if (other.length > 0) return refused(...other, ...CONFLICT)

  const checked = checkWith(loaded, placements, methods, new Date().toISOString().slice(0, 10), tool)
  const wrong = printProblems(checked)
  for (const name of parcel.left)
    warn(`\`${name}\` is named by no run and was left out: add it under \`files\` to keep it.`)
  for (const note of parcel.notes) warn(note)
  if (wrong && !options.keepGoing)
    return refused('Nothing was taken: mend it and hand it in again, or take it as it is with --keep-going.')
  const { campaign } = checked
  const verdicts = parcel.runs.map(({ id }) =>
    runLine(
      id,
      campaign.runs.find((run) => run.id === id),
    ),
  )
  const done = place({ root, parcel, campaign, fitted, exists: loaded.exists, from: basename(file) }, options)
  return { ...done, lines: [...verdicts, ...done.lines] }
}

const main = async (): Promise<void> => {
  const call = readCall(
    {
      branch: { type: 'string' },
      'no-commit': { type: 'boolean' },
      'keep-going': { type: 'boolean' },
      root: { type: 'string' },
    },
    HELP,
  )
  if (!call) return
  const [file, extra] = call.positionals
  if (file === undefined || extra !== undefined) return complain(`Name one archive or run.\n\n${HELP}`)
  const { branch, 'no-commit': noCommit = false, 'keep-going': keepGoing = false, root: folder } = call.values
  if (noCommit && branch !== undefined) return complain(`--branch or --no-commit, not both.\n\n${HELP}`)
  const root = rootOf(folder)
  if (!existsSync(resolve(root, 'shared'))) return complain(`${folder ?? root} holds no shared/.\n\n${HELP}`)
  const { taken, lines } = await take(file, root, { branch, commit: !noCommit, keepGoing })
  const text = lines.map((line) => `${line}\n`).join('')
  if (taken) process.stdout.write(text)
  else {
    process.stderr.write(text)
    process.exitCode = 1
  }
}

await main()
