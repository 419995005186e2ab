import { existsSync, writeFileSync } from 'node:fs'
import { canJudgeBy, complain, readCall, rootOf, tool } from './command.ts'
import { baseOf } from './summary/base.ts'
import { summaryText } from './summary/text.ts'

const HELP = `npm run summary -- <base> [options]     what this branch changes in the records, as Markdown

  <base>            branch, tag or commit that this one is to go into, as main or origin/main
  --out FILE        write there instead of printing
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --as-of DATE      the day to judge both by, YYYY-MM-DD (today)
  --help            this text

Compared is what lies here with the commit where the two parted. Errors in the files do not stop it; see check.
Exit status: 0 done; 2 wrong call, or git cannot tell.
`

const main = async (): Promise<void> => {
  const call = readCall(
    { out: { type: 'string' }, root: { type: 'string' }, 'as-of': { type: 'string' } },
    HELP,
  )
  if (!call) return
  const [name, extra] = call.positionals
  if (name === undefined || extra !== undefined) return complain(`Name one base.\n\n${HELP}`)
  const { out, root: folder, 'as-of': asOf } = call.values
  if (!canJudgeBy(asOf)) return
  const root = rootOf(folder)
  if (!existsSync(root)) return complain(`There is no folder ${folder}.`)
  const base = baseOf(root, name)
  if (typeof base === 'string') return complain(base)
  const made = await summaryText(root, base, tool, asOf)
  if ('why' in made) return complain(made.why)
  if (out === undefined) process.stdout.write(made.text)
  else writeFileSync(out, made.text)
}

await main()
