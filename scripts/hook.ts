import { complain, home, readArguments, rootOf, tool } from './command.ts'
import { installHook, removeHook } from './hook/install.ts'
import { stagedProblems } from './hook/problems.ts'

const HELP = `npm run hook -- [options]     check on what is staged for the next commit, and nothing else

  --install         let git call it before each commit; another hook is never overwritten
  --remove          take it away again
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --help            this text

The content is that of git's index, not of the working folder. Exit status: 0 no errors; 1 errors; 2 wrong call.
`

const checkIndex = async (root: string): Promise<void> => {
  const found = await stagedProblems(root, new Date().toISOString().slice(0, 10), tool)
  if (found.kind === 'cannot') return complain(found.why)
  if (found.kind === 'nothing-staged') return
  const { printTerminal } = await import('../src/problems/printers/terminal.ts')
  const { problems, textOf } = found
  const colour = process.stderr.isTTY === true && !process.env.NO_COLOR
  for (const problem of problems) process.stderr.write(`${printTerminal(problem, textOf, { colour })}\n\n`)
  if (problems.every(({ severity }) => severity !== 'error')) return
  process.stderr.write(
    'Nothing was committed. Mend it and stage it again; --no-verify commits it as it is.\n',
  )
  process.exitCode = 1
}

const main = async (): Promise<void> => {
  const call = readArguments(
    { install: { type: 'boolean' }, remove: { type: 'boolean' }, root: { type: 'string' } },
    HELP,
  )
  if (!call) return
  const { install, remove, root: folder } = call.values
  if (install && remove) return complain(`--install or --remove, not both.\n\n${HELP}`)
  const root = rootOf(folder)
  if (!install && !remove) return checkIndex(root)
  const { ok, text } = install ? installHook(root, home) : removeHook(root)
  if (!ok) return complain(text)
  process.stdout.write(`${text}\n`)
}

await main()
