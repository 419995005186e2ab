/** The commit hook, in real repositories: what is staged is checked, whatever lies in the working folder. */
import {
  appendFileSync,
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { neededFiles } from '../../scripts/hook/needed.ts'
import { stagedProblems } from '../../scripts/hook/problems.ts'
import { loadRecords } from '../../src/format/node/load.ts'
import { readRecords } from '../../src/format/records.ts'
import { loadMethods } from '../../src/methods/registry.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'
import {
  card,
  folder,
  home,
  otherRun,
  runFile,
  type SmallRepository,
  smallRepository,
} from './small-repository.ts'

let small: SmallRepository
let root: string
const git = (...args: string[]) => small.git(...args)
const edit = (path: string, from: RegExp, to: string) => small.edit(path, from, to)
const hook = (...args: string[]) => small.command('hook', args)

beforeEach(() => {
  small = smallRepository()
  root = small.root
})
afterEach(() => small.remove())

/** `path:line:column severity code`, as the command prints it, of everything that is wrong with the next commit. */
const wrong = async (folder = root) => {
  const found = await stagedProblems(folder, '2026-04-15', 'test')
  if (found.kind === 'cannot') return found.why
  if (found.kind === 'nothing-staged') return found.kind
  return found.problems.map(
    ({ at, severity, code, message }) => `${at.file}:${at.line}:${at.column} ${severity} ${code} ${message}`,
  )
}

describe('what is staged', () => {
  it('is nothing where no record is', async () => {
    writeFileSync(join(root, 'other.txt'), 'x')
    git('add', '.')
    expect(await wrong()).toBe('nothing-staged')
  })
  it('is checked, and what is not staged is not', async () => {
    edit(runFile, /^by: .*$/m, 'by: [nobody-known]')
    expect(await wrong()).toBe('nothing-staged')
    git('add', '.')
    edit(runFile, /^by: .*$/m, 'by: [mlindqvist]')
    expect(await wrong()).toEqual([expect.stringContaining(`${runFile}:5:6 error reference/unknown`)])
  })
  it('is computed: a fault that only the method finds', async () => {
    // A time that goes back, which no schema of fields can tell.
    edit(runFile, /^ {2}5 {5}/m, '  15    ')
    git('add', '.')
    expect(await wrong()).toEqual([expect.stringMatching(`${runFile}:\\d+:3 error .*time`)])
  })
  it('is a card, with its formulas', async () => {
    edit(card, /accept: .*$/m, 'accept: leak_rate < 6 kg')
    git('add', '.')
    expect(await wrong()).toContainEqual(expect.stringMatching(`^${card}:\\d+:\\d+ error`))
  })
  it('says nothing of faults in files that are not staged', async () => {
    edit(card, /^title: .*$/m, 'titel: Tank')
    git('commit', '-qam', 'A broken card')
    appendFileSync(join(root, runFile), '\nOne more line.\n')
    git('add', '.')
    expect(await wrong()).toEqual([])
  })
  it('says what misses a file that is taken away', async () => {
    git('rm', '-q', card)
    expect(await wrong()).toEqual([
      expect.stringMatching(`^${runFile}:.* error reference/unknown .*hull-bay-leak`),
      expect.stringMatching(`^${otherRun}:.* error reference/unknown .*hull-bay-leak`),
      expect.stringContaining('shared/gates/first-water.md:5:5 error reference/unknown'),
    ])
  })
  it('says that an id is taken, whichever file is staged', async () => {
    cpSync(join(root, runFile), join(root, folder, 'pg-02.md'))
    git('add', '.')
    expect(await wrong()).toContainEqual(
      expect.stringContaining('shared/instruments/pg-02.md:1:1 error file/double-id'),
    )
  })
  it('takes a moved file for what it is', async () => {
    renameSync(join(root, runFile), join(root, runFile.replace('0935', '0936')))
    git('add', '.')
    expect(await wrong()).toEqual([expect.stringMatching(`^${folder}/2026-02-05-0936.* warning `)])
  })
  it('may be a first commit', async () => {
    rmSync(join(root, '.git'), { recursive: true })
    git('init', '-q', '-b', 'main')
    edit(runFile, /^by: .*$/m, 'by: [nobody-known]')
    git('add', '.')
    expect(await wrong()).toEqual([expect.stringContaining(`${runFile}:5:6 error`)])
  })
  it('lies in a subfolder of the repository as well', async () => {
    const inner = join(root, 'type 7')
    mkdirSync(inner)
    git('mv', 'records', 'shared', 'type 7')
    git('commit', '-qm', 'Move')
    edit(`type 7/${runFile}`, /^by: .*$/m, 'by: [nobody-known]')
    git('add', '.')
    expect(await wrong(inner)).toEqual([expect.stringContaining(`${runFile}:5:6 error`)])
  })
  it('cannot be said where there is no repository', async () => {
    rmSync(join(root, '.git'), { recursive: true })
    expect(await wrong()).toBe('There is no git repository here.')
  })
  it('is a logger file: its run is checked, and a pointer to a large file stands for the file', async () => {
    const pointer = 'version https://git-lfs.github.com/spec/v1\noid sha256:00\nsize 9\n'
    const table = '"t";"P"\n0;-2264\n5;-2136\n'
    const readings = 'readings:\n  file: 2026-02-05-0935-hull-bay-leak-bay-1.csv\n'
    edit(runFile, /^readings: \|\n(?: .*\n)+/m, readings)
    const data = runFile.replace('.md', '.csv')
    writeFileSync(join(root, data), table)
    git('add', '.')
    const withFile = await wrong()
    writeFileSync(join(root, data), pointer)
    git('add', '.')
    writeFileSync(join(root, data), table)
    expect(await wrong()).toEqual(withFile)
    expect(withFile).not.toEqual([])
  })
})

describe('installed', () => {
  const file = () => join(root, '.git/hooks/pre-commit')
  it('it stops a commit with an error, and lets a good one through', () => {
    expect(hook('--install').status).toBe(0)
    expect(hook('--install').status).toBe(0)
    edit(runFile, /^by: .*$/m, 'by: [nobody-known]')
    const bad = small.call('git', ['commit', '-qam', 'Wrong'])
    expect(bad.status).toBe(1)
    expect(bad.stderr).toContain(`${runFile}:5:6  error  reference/unknown`)
    expect(bad.stderr).toContain('> 5 | by: [nobody-known]')
    expect(bad.stderr).toContain('--no-verify')
    edit(runFile, /^by: .*$/m, 'by: [mlindqvist]')
    // `commit -a` and `commit <path>` have an index of their own, which the hook must see.
    expect(small.call('git', ['commit', '-qm', 'Right', '--', runFile]).stderr).toBe('')
    expect(git('status', '--porcelain')).toBe('')
  })
  it('never over another hook, and takes only itself away', () => {
    writeFileSync(file(), '#!/bin/sh\nexit 0\n')
    chmodSync(file(), 0o755)
    for (const option of ['--install', '--remove']) {
      const { status, stderr } = hook(option)
      expect(status).toBe(2)
      expect(stderr).toContain('another hook')
    }
    expect(readFileSync(file(), 'utf8')).toBe('#!/bin/sh\nexit 0\n')
    rmSync(file())
    hook('--install')
    expect(hook('--remove').status).toBe(0)
    expect(existsSync(file())).toBe(false)
    expect(hook('--remove').stdout).toContain('no commit hook')
  })
  it('lies where the team keeps its hooks', () => {
    git('config', 'core.hooksPath', 'our hooks')
    hook('--install')
    expect(existsSync(join(root, 'our hooks/pre-commit'))).toBe(true)
  })
})

describe('which files are read', () => {
  const file = (path: string, text = '') => ({ path, text })
  const files = [
    file('shared/cards/leak.md', 'after: [flow]'),
    file('shared/cards/flow.md'),
    file('shared/cards/other.md'),
    file('shared/articles/wing/tank.md'),
    file('shared/people.yaml', 'names other'),
    file('records/runs/2026-03/a-1.md', 'card: leak\ngiven: {v: {from: b-2, measure: x}}'),
    file('records/runs/2026-03/b-2.md', 'readings: {file: b-2.csv}'),
    file('records/runs/2026-03/c-3.md', 'names a-1'),
    file('records/items/leak.md', 'the id of a card'),
  ]
  it('are the wanted ones, what they name, and what has their id', () => {
    const needed = neededFiles(files, new Set(['records/runs/2026-03/a-1.md']))
    expect(needed.map(({ path }) => path).sort()).toEqual([
      'records/items/leak.md',
      'records/runs/2026-03/a-1.md',
      'records/runs/2026-03/b-2.md',
      'shared/articles/wing/tank.md',
      'shared/cards/flow.md',
      'shared/cards/leak.md',
      'shared/people.yaml',
    ])
  })
  it('are enough: no record of the demo misses anything among them', async () => {
    const [methods] = await Promise.all([loadMethods(), prepareFormulas()])
    const { texts, exists } = loadRecords(home, methods)
    const all = [...texts].map(([path, text]) => file(path, text))
    const some = all.filter((_, index) => index % 9 === 0)
    expect(some.length).toBeGreaterThan(10)
    for (const { path } of some) {
      const needed = neededFiles(all, new Set([path]))
      const { problems } = readRecords(needed, methods, exists)
      const own = problems.filter(({ at }) => at.file === path)
      expect(
        own.map(({ message }) => message),
        path,
      ).toEqual([])
    }
  })
})
