/** Large and random repositories, written through `git fast-import`. */
import { execFileSync } from 'node:child_process'
import { temporaryFolder } from './repository.ts'

export type Step = {
  readonly parents: readonly number[]
  /** Path → text; null takes away. Against the first parent; of the others a merge takes nothing by itself. */
  readonly files: Readonly<Record<string, string | null>>
}

/** Steps are commits, numbered from 0; `tips` are branches → number. */
export const importSteps = (steps: readonly Step[], tips: Readonly<Record<string, number>>): string => {
  const folder = temporaryFolder()
  execFileSync('git', ['init', '-q', '-b', 'main', folder])
  const begin = Date.UTC(2020, 0, 1) / 1000
  const data = (text: string) => `data ${Buffer.byteLength(text)}\n${text}\n`
  const lines = steps.map(({ parents, files }, at) => {
    const [first, ...others] = parents
    const changes = Object.entries(files).map(([path, text]) =>
      text === null ? `D ${path}\n` : `M 100644 inline ${path}\n${data(text)}`,
    )
    return [
      `commit refs/heads/step-${at}\nmark :${at + 1}\n`,
      `author Ada <ada@example.org> ${begin + at * 3600} +0100\n`,
      `committer Ada <ada@example.org> ${begin + at * 3600} +0100\n`,
      data(`step ${at}`),
      first === undefined ? '' : `from :${first + 1}\n`,
      ...others.map((parent) => `merge :${parent + 1}\n`),
      ...changes,
    ].join('')
  })
  const ends = Object.entries(tips).map(([name, at]) => `reset refs/heads/${name}\nfrom :${at + 1}\n\n`)
  const drop = steps.map((_, at) => `reset refs/heads/step-${at}\nfrom ${'0'.repeat(40)}\n\n`)
  execFileSync('git', ['-C', folder, 'fast-import', '--quiet'], {
    input: [...lines, ...ends, ...drop].join(''),
  })
  execFileSync('git', ['-C', folder, 'reset', '-q', '--hard'])
  return folder
}

/** Runs in folders a month, cards that change now and then; in one line, or each commit on a branch that is merged. */
export const manyRuns = (runs: number, commits: number, merged: boolean): string => {
  const steps: Step[] = []
  const perCommit = Math.ceil(runs / commits)
  let main: number | undefined
  for (let at = 0, run = 0; at < commits; at++) {
    const files: Record<string, string> = {}
    for (let n = 0; n < perCommit && run < runs; n++, run++) {
      const month = `${2020 + Math.floor(run / 1200)}-${String((Math.floor(run / 100) % 12) + 1).padStart(2, '0')}`
      files[`records/runs/${month}/${month}-02-0912-run-${run}.md`] = `---\ncard: leak\nrun: ${run}\n---\n`
    }
    if (at % 50 === 0) files[`shared/cards/card-${at % 1000}.md`] = `limit ${at}\n`
    const parents: number[] = main === undefined ? [] : [main]
    steps.push({ parents, files })
    const own = steps.length - 1
    if (merged && main !== undefined) steps.push({ parents: [main, own], files })
    main = steps.length - 1
  }
  return importSteps(steps, { main: main ?? 0 })
}
