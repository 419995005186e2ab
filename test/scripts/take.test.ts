/** Taking a handed-in run into a repository: placed, checked, pictures made small, a branch and a commit; nothing lost. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { zipSync } from 'fflate'
import sharp from 'sharp'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { folder, home, otherRun, type SmallRepository, smallRepository } from './small-repository.ts'

// Each call reads all records.
vi.setConfig({ testTimeout: 60_000 })

const id = '2026-02-06-0900-hull-bay-leak-bay-3'
const path = `${folder}/${id}.md`
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)
const demo = readFileSync(join(home, path), 'utf8')
const withFiles = (...files: string[]): string =>
  demo.replace(
    '\nreadings: |',
    `\nfiles:\n${files.map((file) => `  - {file: ${file}, caption: the gauge}`).join('\n')}\nreadings: |`,
  )

/** A camera's picture: held upright, with position, maker and time; noise, so that it is as large as a real one. */
const photo = (width: number, height: number): Promise<Buffer> =>
  sharp({
    create: {
      width,
      height,
      channels: 3,
      background: 'grey',
      noise: { type: 'gaussian', mean: 128, sigma: 60 },
    },
  })
    .withExif({
      IFD0: { Make: 'Invented' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '59/1 54/1 0/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '10/1 45/1 0/1',
      },
    })
    .withMetadata({ orientation: 6 })
    .jpeg({ quality: 90 })
    .toBuffer()

let large: Buffer
beforeAll(async () => {
  large = await photo(2100, 1400)
  expect(large.length).toBeGreaterThan(2e6)
  const { exif, orientation } = await sharp(large).metadata()
  expect(exif?.includes('Invented')).toBe(true)
  expect(orientation).toBe(6)
})

let small: SmallRepository
let inbox: string
beforeEach(() => {
  small = smallRepository()
  inbox = join(small.root, '..', `${small.root.split('/').pop()} inbox`)
  mkdirSync(inbox)
})
afterEach(() => {
  small.remove()
  rmSync(inbox, { recursive: true, force: true })
})

const handIn = (name: string, content: Uint8Array | string): string => {
  writeFileSync(join(inbox, name), content)
  return join(inbox, name)
}

/** As the form packs it: everything under the folder of the month. */
const archive = (files: Record<string, Uint8Array | string>, below = `${folder}/`): string => {
  const entries = Object.entries(files).map(
    ([name, content]) => [below + name, typeof content === 'string' ? bytesOf(content) : content] as const,
  )
  return handIn('run.zip', zipSync(Object.fromEntries(entries)))
}

const take = (...args: string[]) => small.command('take', args)
const status = () => small.git('status', '--porcelain')
const branches = () => small.git('branch', '--format=%(refname:short)').trim().split('\n')
const filesHere = () => readdirSync(join(small.root, folder)).sort()

/** Nothing happened: same files, same branches, clean tree. */
const untouched = () => {
  expect(filesHere()).toHaveLength(2)
  expect(branches()).toEqual(['main'])
  expect(status()).toBe('')
}

describe('a run of one file', () => {
  it('is placed, judged and committed on a branch of its own, under the name of who made it', () => {
    const { status: exit, stdout, stderr } = small.program('take', [handIn(`${id}.md`, demo)])
    expect(stderr).toBe('')
    expect(exit).toBe(0)
    expect(readFileSync(join(small.root, path), 'utf8')).toBe(demo)
    expect(small.git('branch', '--show-current').trim()).toBe(`take/${id}`)
    expect(
      small.git('show', '--format=%an <%ae>%n%cn%n%s', '--name-status', 'HEAD').trim().split('\n'),
    ).toEqual([
      'Dario Reyes <dario.reyes@type7.example>',
      'Maja Lindqvist',
      `Take in run ${id}`,
      '',
      `A\t${path}`,
    ])
    expect(stdout).toMatch(new RegExp(`^${id}: (pass|fail|undetermined) \\(leak `))
    expect(stdout).toContain('open a pull request')
    expect(status()).toBe('')
  })

  it('has the first person of `by` whose address is known as author, else whoever types', () => {
    const people = join(small.root, 'shared/people.yaml')
    writeFileSync(people, readFileSync(people, 'utf8').replace(/ {2}emails: \[dario.*\n/, ''))
    expect(take(handIn(`${id}.md`, demo)).stdout).toContain('author as git knows you')
    expect(small.git('log', '-1', '--format=%an').trim()).toBe('maja.lindqvist')
  })

  it('brings the files that it names and that lie beside it, and no others', async () => {
    const scan = '%PDF-1.4 invented'
    handIn(`${id}-1.pdf`, scan)
    handIn('private.pdf', scan)
    const { status: exit } = take(handIn(`${id}.md`, withFiles(`${id}-1.pdf`)))
    expect(exit).toBe(0)
    expect(filesHere().filter((name) => name.endsWith('.pdf'))).toEqual([`${id}-1.pdf`])
  })

  it('is done when it is there already, and says so: on the disk, on the branch', () => {
    const file = handIn(`${id}.md`, demo)
    take(file)
    const again = take(file)
    expect([again.status, again.stderr]).toEqual([0, ''])
    expect(again.stdout).toContain('There already')
    small.git('switch', '-q', 'main')
    const elsewhere = take(file)
    expect(elsewhere.status).toBe(0)
    expect(elsewhere.stdout).toContain(`The branch take/${id} holds exactly this already`)
    expect(existsSync(join(small.root, path))).toBe(false)
  })

  it('is refused where another content is there, and says what to do: on the disk, on the branch', () => {
    take(handIn(`${id}.md`, demo))
    const head = small.git('rev-parse', 'HEAD')
    const changed = handIn(`${id}.md`, `${demo}\nSeen again.\n`)
    const onDisk = take(changed)
    expect(onDisk.status).toBe(1)
    expect(onDisk.stderr).toContain(`${path} is there already, with other content`)
    expect(readFileSync(join(small.root, path), 'utf8')).toBe(demo)
    expect(small.git('rev-parse', 'HEAD')).toBe(head)
    small.git('switch', '-q', 'main')
    const onBranch = take(changed)
    expect(onBranch.status).toBe(1)
    expect(onBranch.stderr).toContain('name another with --branch')
    expect(existsSync(join(small.root, path))).toBe(false)
    expect(take(changed, '--branch', 'second-try').status).toBe(0)
  })

  it('with an error is refused with its place, and nothing is written; --keep-going takes it', () => {
    const wrong = handIn(`${id}.md`, demo.replace(/baro: ba-\d+/, 'baro: ba-99'))
    const { status: exit, stderr } = take(wrong)
    expect(exit).toBe(1)
    expect(stderr).toMatch(new RegExp(`${path}:\\d+:\\d+ +error +reference/unknown`))
    expect(stderr).toContain('Nothing was taken')
    untouched()
    const kept = take(wrong, '--keep-going')
    expect(kept.status).toBe(0)
    expect(kept.stdout).toContain(`${id}: cannot be judged yet.`)
    expect(branches()).toContain(`take/${id}`)
  })

  it('is refused where its name differs from a record only in case, or its id is taken in another month', () => {
    const double = `${otherRun.replace(/^.*\/|\.md$/g, '')}.md`
    const moved = demo.replace(/^when: .*$/m, 'when: 2026-03-05T14:10+01:00')
    const { status: exit, stderr } = take(handIn(double, moved))
    expect(exit).toBe(1)
    expect(stderr).toContain('file/double-id')
    untouched()
  })
})

describe('the repository', () => {
  it('keeps what else is changed or staged, and commits none of it', () => {
    small.edit(otherRun, /## Observed/, '## Changed by hand')
    writeFileSync(join(small.root, 'shared/staged.txt'), 'staged')
    small.git('add', 'shared/staged.txt')
    const before = status()
    expect(take(handIn(`${id}.md`, demo)).status).toBe(0)
    expect(status()).toBe(before)
    expect(small.git('show', '--name-only', '--format=', 'HEAD').trim()).toBe(path)
  })

  it('may be without git: files are placed, and it says so', () => {
    rmSync(join(small.root, '.git'), { recursive: true })
    const { status: exit, stdout } = take(handIn(`${id}.md`, demo))
    expect(exit).toBe(0)
    expect(stdout).toContain('Without git there is no branch and no commit')
    expect(existsSync(join(small.root, path))).toBe(true)
  })

  it('gets no commit with --no-commit, and one later by the same call without it', () => {
    const file = handIn(`${id}.md`, demo)
    expect(take(file, '--no-commit').status).toBe(0)
    expect(branches()).toEqual(['main'])
    expect(status()).toBe(`?? ${path}\n`)
    expect(take(file, '--no-commit').stdout).toContain('There already')
    expect(take(file).status).toBe(0)
    expect(status()).toBe('')
    expect(branches()).toContain(`take/${id}`)
  })

  it('is left alone while a merge is under way, and where git knows nobody', () => {
    const file = handIn(`${id}.md`, demo)
    writeFileSync(join(small.root, '.git/MERGE_HEAD'), small.git('rev-parse', 'HEAD'))
    expect(take(file).stderr).toContain('a merge is under way')
    rmSync(join(small.root, '.git/MERGE_HEAD'))
    const nobody = small.command('take', [file], {
      GIT_COMMITTER_NAME: '',
      GIT_COMMITTER_EMAIL: '',
      GIT_AUTHOR_NAME: '',
      GIT_AUTHOR_EMAIL: '',
    })
    expect(nobody.stderr).toContain('git does not know who you are')
    untouched()
  })

  it('says what git said where a hook refuses the commit; the files stay in their place', () => {
    writeFileSync(join(small.root, '.git/hooks/pre-commit'), '#!/bin/sh\necho not today >&2\nexit 1\n', {
      mode: 0o755,
    })
    const { status: exit, stderr } = take(handIn(`${id}.md`, demo))
    expect(exit).toBe(1)
    expect(stderr).toContain('not today')
    expect(stderr).toContain('The files lie in their place')
    expect(readFileSync(join(small.root, path), 'utf8')).toBe(demo)
  })

  it('is told where the branch does not begin at the main line', () => {
    small.git('switch', '-qc', 'elsewhere')
    expect(take(handIn(`${id}.md`, demo)).stdout).toContain('begins at elsewhere, not at main')
  })
})

describe('photos', () => {
  const name = `${id}-1.jpg`
  it('too large are made smaller till they fit, upright, without position and other data of the camera', async () => {
    const { status: exit, stdout, stderr } = take(archive({ [`${id}.md`]: withFiles(name), [name]: large }))
    expect(stderr).toBe('')
    expect(exit).toBe(0)
    expect(stdout).toContain('without data of the camera')
    const placed = readFileSync(join(small.root, folder, name))
    // The limit of the demo's campaign.yaml.
    expect(placed.length).toBeLessThanOrEqual(2e6)
    const { width = 0, height = 0, exif, xmp, iptc, orientation, format } = await sharp(placed).metadata()
    expect({ exif, xmp, iptc, orientation, format }).toEqual({ format: 'jpeg' })
    // It was held upright: what was written across stands now.
    expect(height).toBeGreaterThan(width)
    expect(height / width).toBeCloseTo(1.5, 2)
    expect(small.git('show', '--name-only', '--format=', 'HEAD').trim().split('\n').sort()).toEqual(
      [path, `${folder}/${name}`].sort(),
    )
  })

  it('that are taken twice are the same again', () => {
    const file = archive({ [`${id}.md`]: withFiles(name), [name]: large })
    take(file)
    const again = take(file)
    expect([again.status, again.stderr]).toEqual([0, ''])
    expect(again.stdout).toContain('There already')
  })

  it('that are small and hold nothing but the picture stay as they are, byte for byte', async () => {
    const plain = await sharp({ create: { width: 300, height: 200, channels: 3, background: 'red' } })
      .jpeg()
      .toBuffer()
    const png = await sharp(plain).png().toBuffer()
    const files = { [name]: plain, [`${id}-2.png`]: png }
    expect(take(archive({ [`${id}.md`]: withFiles(...Object.keys(files)), ...files })).status).toBe(0)
    for (const [file, bytes] of Object.entries(files))
      expect(readFileSync(join(small.root, folder, file)).equals(bytes)).toBe(true)
  })

  it('that are small lose their position too, and keep a hidden second picture no longer', async () => {
    const inner = await photo(60, 40)
    const outer = await sharp({ create: { width: 300, height: 200, channels: 3, background: 'red' } })
      .jpeg()
      .toBuffer()
    const hidden = Buffer.concat([outer, inner])
    take(
      archive({
        [`${id}.md`]: withFiles(name, `${id}-2.jpg`),
        [name]: await photo(60, 40),
        [`${id}-2.jpg`]: hidden,
      }),
    )
    for (const file of [name, `${id}-2.jpg`])
      expect(readFileSync(join(small.root, folder, file)).includes('Invented'), file).toBe(false)
  })

  it.each([
    ['under another ending', `${id}-1.png`, 'holds jpeg, not what its ending says'],
    ['of a kind that the campaign does not take', `${id}-1.heic`, 'campaign.yaml takes jpg, png, pdf, csv'],
  ])('%s are refused', (_, wrong, why) => {
    const { status: exit, stderr } = take(archive({ [`${id}.md`]: withFiles(wrong), [wrong]: large }))
    expect(exit).toBe(1)
    expect(stderr).toContain(why)
    untouched()
  })

  it('that are cut off, or no pictures, are refused; so is a scan that is too large', () => {
    const cut = take(archive({ [`${id}.md`]: withFiles(name), [name]: large.subarray(0, large.length / 2) }))
    expect(cut.stderr).toContain('cannot be read as a picture')
    const none = take(archive({ [`${id}.md`]: withFiles(name), [name]: 'no picture' }))
    expect(none.stderr).toContain('cannot be read as a picture')
    const scan = `${id}-1.pdf`
    const heavy = take(archive({ [`${id}.md`]: withFiles(scan), [scan]: new Uint8Array(2_000_001) }))
    expect(heavy.stderr).toContain('campaign.yaml takes at most 2.0 MB a file')
    untouched()
  })
})

describe('an archive', () => {
  it('may hold two runs: a commit each, on one branch', () => {
    const second = id.replace('0900', '0930')
    const other = demo.replace('T09:00', 'T09:30').replace(/^( {2}\d+ +-?\d)(\d)/gm, '$1$21')
    const { status: exit, stderr } = take(archive({ [`${id}.md`]: demo, [`${second}.md`]: other }))
    expect([exit, stderr]).toEqual([0, ''])
    expect(branches()).toEqual(['main', `take/${id}-and-1-more`])
    expect(small.git('log', '--format=%s', 'main..').trim().split('\n')).toEqual([
      `Take in run ${second}`,
      `Take in run ${id}`,
    ])
  })

  it('may be packed again with folders and litter around it; what no run names is left out, and said', () => {
    const clean = archive({ [`${id}.md`]: demo, 'holiday.jpg': 'x', '.DS_Store': 'x' }, 'Phone of Maja/out/')
    const { status: exit, stderr } = take(clean)
    expect(exit).toBe(0)
    expect(stderr).toBe(
      '`Phone of Maja/out/holiday.jpg` is named by no run and was left out: add it under `files` to keep it.\n',
    )
  })

  it.each([
    ['../../../evil.md', 'leads out of the archive'],
    ['/tmp/evil.md', 'a place on a machine'],
    ['C:\\evil.md', 'holds a backslash'],
    ['a\0.md', 'cannot be seen'],
  ])('with %j in it is refused whole', (name, why) => {
    const { status: exit, stderr } = take(archive({ [`${folder}/${id}.md`]: demo, [name]: demo }, ''))
    expect(exit).toBe(1)
    expect(stderr).toContain(why)
    untouched()
  })

  it('with names that differ by case only is refused', () => {
    const { status: exit, stderr } = take(archive({ [`${id}.md`]: demo, 'a.jpg': 'x', 'A.jpg': 'y' }))
    expect(exit).toBe(1)
    expect(stderr).toContain('one file on many systems')
    untouched()
  })

  it('that holds more than it says, or other than it says, is refused before it fills the memory', () => {
    const bomb = zipSync({ [`${id}.md`]: new Uint8Array(50e6) }, { level: 9 })
    const view = new DataView(bomb.buffer)
    const directory = view.getUint32(bomb.length - 6, true)
    view.setUint32(directory + 24, 100, true)
    const { status: exit, stderr } = take(handIn('bomb.zip', bomb))
    expect(exit).toBe(1)
    expect(stderr).toContain('is damaged: what unpacks is not what the archive says')
    untouched()
  })

  it('that is none, a folder, or not there, is refused in a sentence', () => {
    expect(take(handIn('x.zip', 'no archive')).stderr).toBe('x.zip is not taken: it is no zip archive.\n')
    expect(take(handIn('empty.zip', zipSync({}))).stderr).toContain('There is no run in it')
    expect(take(inbox).stderr).toContain('it is a folder')
    expect(take(join(inbox, 'nowhere.zip')).stderr).toContain('there is no such file')
    expect(take().status).toBe(2)
    untouched()
  })
})
