import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { readRecords } from '../src/format/records.ts'
import type { CampaignSettings } from '../src/format/types.ts'
import { NO_REVIEWS, parseReviewsFile, printReviewsFile, REVIEWS_FILE } from '../src/history/forge/file.ts'
import { type Gathered, gather } from '../src/history/forge/gather.ts'
import { askForge } from '../src/history/forge/node/fetch.ts'
import { type ForgePlace, forgePlace } from '../src/history/forge/place.ts'
import { campaignRoot, complain, readArguments } from './command.ts'
import { git, gitLine } from './git.ts'

const HELP = `npm run reviews -- [options]     asks the forge who approved what, and writes it to a file that check reads

  --out FILE          where to (${REVIEWS_FILE} beside records/); it is never committed
  --fresh             ask about every commit again, also those that the file knows already
  --repository NAME   owner/name (GITHUB_REPOSITORY, else \`forge\` of shared/campaign.yaml)
  --api URL           address of the API (GITHUB_API_URL, else that of the forge)
  --root DIR          a folder that holds records/ and shared/ (this repository)
  --help              this text

A step for CI. The token comes from FORGE_TOKEN or GITHUB_TOKEN in the environment; it needs to read contents and
pull requests. Only commits of the main line that touch records/ or shared/ are asked about.
Exit status: 0 all was asked; 1 the forge could not be asked to the end, what was found is kept; 2 wrong call.
`

const settingsOf = (root: string): CampaignSettings => {
  const path = 'shared/campaign.yaml'
  const file = join(root, path)
  const text = existsSync(file) ? readFileSync(file, 'utf8') : ''
  return readRecords([{ path, text }], {}).records.settings
}

type Line = { readonly commits: readonly string[]; readonly prefix: string }

/** Commits of the main line that touch records, oldest first; or why they are not known. */
const mainLine = (root: string, main: string): Line | string => {
  const prefix = gitLine(root, ['rev-parse', '--show-prefix'])
  if (prefix === null) return 'There is no git repository here.'
  if (gitLine(root, ['rev-parse', '--is-shallow-repository']) === 'true') {
    return 'The history is cut off here (a shallow clone); fetch it whole: git fetch --unshallow'
  }
  const onMain = gitLine(root, ['symbolic-ref', '-q', '--short', 'HEAD']) === main
  const tip = [...(onMain ? ['HEAD'] : []), `refs/remotes/origin/${main}`, `refs/heads/${main}`].find(
    (ref) => gitLine(root, ['rev-parse', '-q', '--verify', `${ref}^{commit}`]) !== null,
  )
  if (tip === undefined) {
    return `There is no branch ${main} here, neither own nor of origin; set \`main\` in shared/campaign.yaml, or fetch it.`
  }
  const listed = git(root, ['rev-list', '--first-parent', '--reverse', tip, '--', 'records', 'shared'])
  if (!listed.ok) return `git: ${listed.why}`
  return { commits: listed.text.split('\n').filter((line) => line !== ''), prefix }
}

/** Waits and says where it stands: on a terminal in place, in CI now and then. */
const showProgress = (done: number, of: number): void => {
  if (process.stderr.isTTY) process.stderr.write(`\rasking the forge: ${done + 1} of ${of} commits `)
  else if (done > 0 && done % 100 === 0) process.stderr.write(`asking the forge: ${done} of ${of} commits\n`)
  if (process.stderr.isTTY && done + 1 === of) process.stderr.write('\n')
}

const askAll = (line: Line, place: ForgePlace, main: string, file: string, fresh: boolean) => {
  const known = !existsSync(file) ? NO_REVIEWS : parseReviewsFile(readFileSync(file, 'utf8'))
  if (!known)
    process.stderr.write(`${file} is none of this command's files, or damaged; all is asked anew.\n`)
  const token = process.env.FORGE_TOKEN || process.env.GITHUB_TOKEN || null
  const say = (text: string): void => void process.stderr.write(`${text}\n`)
  if (token === null) say('No token in FORGE_TOKEN or GITHUB_TOKEN: the forge answers few questions an hour.')
  const ask = askForge({ ...place, token, pause: (time) => pause(time), now: Date.now, say })
  const { commits, prefix } = line
  return gather(ask, { commits, known: known ?? NO_REVIEWS, main, prefix, fresh, progress: showProgress })
}

const count = (number: number, what: string): string => `${number} ${what}${number === 1 ? '' : 's'}`

const report = (found: Gathered, commits: number, shown: string): string => {
  const approvals = found.pulls.reduce((sum, pull) => sum + pull.approvals.length, 0)
  return [
    ...found.notes.map((note) => `Note: ${note}`),
    `${shown}: ${count(found.asked.length, 'commit')} of ${commits} asked about, ` +
      `${count(found.pulls.length, 'pull request')}, ${count(approvals, 'approval')} of a last state`,
    '',
  ].join('\n')
}

/** Written beside and moved, so that a reader never sees half of it. Null, or why it could not be written. */
const writeWhole = (file: string, text: string): string | null => {
  try {
    writeFileSync(`${file}.part`, text)
    renameSync(`${file}.part`, file)
    return null
  } catch (error) {
    return `${file} could not be written: ${error instanceof Error ? error.message : String(error)}`
  }
}

const main = async (): Promise<void> => {
  const call = readArguments(
    {
      out: { type: 'string' },
      fresh: { type: 'boolean' },
      repository: { type: 'string' },
      api: { type: 'string' },
      root: { type: 'string' },
    },
    HELP,
  )
  if (!call) return
  const { out, fresh = false, repository, api, root: folder } = call.values
  const root = campaignRoot(folder, HELP)
  if (root === null) return
  const settings = settingsOf(root)
  const place = forgePlace({
    api: api ?? (process.env.GITHUB_API_URL || undefined),
    repository: repository ?? (process.env.GITHUB_REPOSITORY || undefined),
    address: settings.forge,
  })
  if (typeof place === 'string') return complain(`${place[0]?.toUpperCase()}${place.slice(1)}.`)
  const line = mainLine(root, settings.main)
  if (typeof line === 'string') return complain(line)
  const file = out === undefined ? join(root, REVIEWS_FILE) : resolve(out)
  if (gitLine(root, ['ls-files', '--error-unmatch', '--', file]) !== null) {
    return complain(
      `${file} is kept in git, and reviews in a file that anybody can commit are not believed.\n` +
        `Take it out (git rm --cached) and name it in .gitignore.`,
    )
  }
  const found = await askAll(line, place, settings.main, file, fresh)
  const unwritten = writeWhole(file, printReviewsFile(found))
  if (unwritten !== null) return complain(unwritten)
  process.stdout.write(report(found, line.commits.length, relative(process.cwd(), file)))
  if (found.stopped === null) return
  process.stderr.write(`${found.stopped[0]?.toUpperCase()}${found.stopped.slice(1)}.\n`)
  process.exitCode = 1
}

await main()
