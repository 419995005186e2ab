/** New files as people ask for them: where they lie, who wrote them, what is refused, and that nothing is lost. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { draftOf, OPTIONS, wanted } from '../../scripts/new/call.ts'
import type { NewContext } from '../../scripts/new/context.ts'
import { isMoment } from '../../scripts/new/when.ts'
import { writerOf } from '../../scripts/new/who.ts'
import { type Opened, openCampaign } from '../../src/campaign/node/open.ts'
import { inHand } from '../../src/history/in-hand.ts'
import { readHistory } from '../../src/history/node/read.ts'
import { makeRepository } from '../history/repository.ts'
import { type SmallRepository, smallRepository } from './small-repository.ts'

let small: SmallRepository
beforeAll(() => {
  small = smallRepository()
})
afterAll(() => small.remove())

const AT = ['--at', '2026-03-19T09:35+01:00']
const call = (...args: string[]) => small.command('new', [...args, ...AT])
const written = (path: string) => readFileSync(join(small.root, path), 'utf8')

let opened: Promise<Opened> | undefined
const context = async (): Promise<NewContext> => {
  opened ??= openCampaign(small.root, 'test', '2026-03-19')
  const { campaign, input } = await opened
  return { campaign, input, root: small.root, when: '2026-03-19T09:35+01:00', by: null, id: undefined }
}

describe('a new file', () => {
  it('of a rework lies in its place, by whom git knows', () => {
    const { status, stderr, stdout } = call(
      '--rework',
      'Hatch: seal',
      '--changes',
      'hull/bay-1/hatch, hull/bay-2',
    )
    expect([status, stderr]).toEqual([0, ''])
    expect(stdout).toContain('2026-03-19-0935-hatch-seal.md')
    const text = written('records/rework/2026-03-19-0935-hatch-seal.md')
    expect(text).toContain('title: "Hatch: seal"')
    expect(text).toContain('by: [mlindqvist]')
    expect(text).toContain('changes: [hull/bay-1/hatch, hull/bay-2]')
    expect(text).toContain('# It overtakes: hull-bay-leak on hull/bay-1 (pass)')
  })
  it('is never written over another, nor under an id that is taken', () => {
    const path = 'records/items/seal.md'
    expect(call('--item', 'Seal', '--kind', 'action', '--about', 'hull-bay-leak').status).toBe(0)
    writeFileSync(join(small.root, path), 'mine')
    const again = call('--item', 'Seal', '--kind', 'action')
    expect([again.status, again.stderr]).toEqual([
      2,
      'records/items/seal.md is there already; nothing was written. Another name: --id seal-2\n',
    ])
    expect(written(path)).toBe('mine')
    const card = call('--item', 'Hull bay leak', '--kind', 'action')
    expect([card.status, card.stderr]).toEqual([
      2,
      'shared/cards/hull-bay-leak.md is there already; nothing was written. Another name: --id hull-bay-leak-2\n',
    ])
    expect(existsSync(join(small.root, 'records/items/hull-bay-leak.md'))).toBe(false)
  })
  it('of minutes names no commit while records lie here that are not committed', () => {
    const { status, stderr } = call('--readiness', 'first-water')
    expect(status).toBe(0)
    expect(stderr).toContain('The basis names no commit: records lie here that are not committed')
    expect(written('records/readiness/2026-03-19-0935-first-water.md')).not.toContain('commit:')
  })
  it('leaves open who wrote it where git knows nobody of the campaign, and says so', () => {
    const { status, stderr } = small.command('new', ['--item', 'Stranger', '--kind', 'discrepancy', ...AT], {
      GIT_AUTHOR_EMAIL: 'nobody@elsewhere.example',
    })
    expect(status).toBe(0)
    expect(stderr).toContain(
      "Git knows you as nobody@elsewhere.example, which is nobody's in shared/people.yaml",
    )
    expect(written('records/items/stranger.md')).toContain('by: …}')
  })
})

describe('a wrong call', () => {
  it('says what is wrong, on the error output, with status 2', () => {
    const { status, stdout, stderr } = call('--item', ' ', '--kind', 'action')
    expect([status, stdout]).toEqual([2, ''])
    expect(stderr).toContain('--item needs a name behind it.')
    expect(call('--item', 'X', '--kind', 'action', '--id', 'A b').stderr).toContain('--id A b is no id')
  })
  it.each([
    [[], 'Name one card'],
    [['hull-bay-leek'], 'There is no card hull-bay-leek; these are close: hull-bay-leak.'],
    [['hull-bay-leak'], 'add --article with one of hull/bay-1, hull/bay-2, hull/bay-3'],
    [['--rework', 'X', '--changes', 'hull/bay-1/hach'], 'these are close: hull/bay-1/hatch'],
    [['--rework', 'X'], 'Say what it changes: --changes part,part'],
    [['--rework', 'X', '--kind', 'action'], '--kind belongs to a new item.'],
    [['--rework', '東京', '--changes', 'hull'], 'name it with --id'],
    [['--item', 'X', '--kind', 'acton'], '--kind discrepancy, --kind action, --kind concession'],
    [['--item', 'X', '--kind', 'action', '--about', 'hull-bay-leek'], 'these are close: hull-bay-leak'],
    [['--readiness', 'first-watr'], 'these are close: first-water'],
    [['--readiness', 'first-water', 'hull-bay-leak'], 'One file at a time'],
  ])('%j', async (args, said) => {
    const { values, positionals } = parseArgs({ args, options: OPTIONS, allowPositionals: true })
    const [card] = positionals
    const kind = wanted(card, values)
    const draft = typeof kind === 'string' ? kind : draftOf(await context(), kind.kind, card ?? '', values)
    expect(draft).toContain(said)
  })
  it('a time that is none', () => {
    expect(isMoment('2026-03-04T09:12+01:00')).toBe(true)
    expect(isMoment('2026-03-04T09:12Z')).toBe(true)
    for (const text of ['2026-03-04', '2026-03-04T09:12', '2026-02-30T09:12+01:00', '2026-03-04T25:12+01:00'])
      expect(isMoment(text), text).toBe(false)
  })
})

describe('who', () => {
  const people = {
    ann: { id: 'ann', name: 'Ann', emails: ['Ann@Example.org'], roles: [] },
  }
  it('is found by the e-mail that git has, whatever its case', () => {
    const { top, git } = makeRepository()
    git('config', 'user.email', 'ann@example.ORG')
    git('config', 'user.name', 'x')
    expect(writerOf(people, top, undefined)).toEqual({ by: 'ann', note: null })
    expect(writerOf(people, top, 'ann')).toEqual({ by: 'ann', note: null })
    expect(writerOf(people, top, 'anne')).toBe('There is no person anne; these are close: ann.')
  })
})

describe('the revision in hand', () => {
  const CARD = 'shared/cards/a.md'
  it('is the newest state of the main line that this branch is made of', async () => {
    const repository = makeRepository()
    const first = repository.commit('card', { [CARD]: 'a' })
    repository.branch('behind')
    repository.go('main')
    const second = repository.commit('changed', { [CARD]: 'b' })
    expect(inHand(await readHistory(repository.top, { main: 'main' }), CARD)).toEqual({ revision: second })
    repository.go('behind')
    repository.commit('other', { 'shared/cards/b.md': 'x' })
    const history = await readHistory(repository.top, { main: 'main' })
    expect(inHand(history, CARD)).toEqual({ revision: first })
    expect(inHand(history, 'shared/cards/b.md')).toMatchObject({ revision: null })
    repository.write(CARD, 'edited')
    expect(inHand(await readHistory(repository.top, { main: 'main' }), CARD)).toEqual({
      revision: null,
      why: `${CARD} lies here changed, and that has not reached the main line yet`,
    })
  })
})

describe('overtakes', () => {
  const overtakes = (...args: string[]) => small.command('overtakes', args)
  it('prints words, or one JSON object', () => {
    const words = small.program('overtakes', ['hull/bay-1/hatch'])
    expect([words.status, words.stderr]).toEqual([0, ''])
    expect(words.stdout).toContain('hull-bay-leak on hull/bay-1  pass, round 1')
    const { passes, part, schema } = JSON.parse(overtakes('hull/bay-1/hatch', '--json').stdout)
    expect([schema, part]).toEqual([1, 'hull/bay-1/hatch'])
    expect(passes).toMatchObject([{ card: 'hull-bay-leak', article: 'hull/bay-1', status: 'pass' }])
  })
  it('knows its parts', () => {
    const { status, stderr } = overtakes('hull/bay-1/hach')
    expect(status).toBe(2)
    expect(stderr).toMatch(
      /^There is no article or part hull\/bay-1\/hach; these are close: hull\/bay-1\/hatch/,
    )
    expect(overtakes().status).toBe(2)
  })
})
