/** The invariants of the code that DEVELOPERS.md names: kept here, so that they stay true. */
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const home = resolve(import.meta.dirname, '../..')
const source = join(home, 'src')

const filesBelow = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name)
    return entry.isDirectory() ? filesBelow(path) : [path]
  })

const files = filesBelow(source).map((path) => relative(source, path))
const code = files.filter((file) => /\.(ts|astro)$/.test(file))
const textOf = (file: string): string => readFileSync(join(source, file), 'utf8')

/** What a module of `src` imports, as paths from `src`; type imports do not tie modules together. */
const importsOf = (file: string, types = false): string[] => {
  const pattern =
    /^\s*(?:import|export)\s+(type\s)?[^'"]*?from\s+['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/gms
  return [...textOf(file).matchAll(pattern)]
    .filter((match) => types || !match[1])
    .map((match) => match[2] ?? match[3] ?? '')
    .map((target) =>
      target.startsWith('.') ? relative(source, resolve(source, file, '..', target)) : target,
    )
}

const below = (folder: string): string[] => code.filter((file) => file.startsWith(`${folder}/`))
const own = (target: string): boolean => !target.startsWith('node:') && existsInSource(target)
const existsInSource = (target: string): boolean => files.includes(target)

/** Folder → folders of ours whose values it may use. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  quantity: [],
  problems: ['quantity', 'methods'],
  methods: ['quantity'],
  functions: ['quantity'],
  judge: ['quantity'],
  format: ['quantity', 'problems'],
  history: ['format'],
  campaign: ['quantity', 'problems', 'format', 'methods', 'functions', 'judge', 'history'],
}

describe('one direction of flow', () => {
  for (const [folder, allowed] of Object.entries(ALLOWED)) {
    it(`src/${folder} uses ${allowed.length === 0 ? 'nothing of ours' : `only ${allowed.join(', ')}`}`, () => {
      const offending = below(folder).flatMap((file) =>
        importsOf(file)
          .filter(own)
          .filter((target) => ![folder, ...allowed].some((ok) => target.startsWith(`${ok}/`)))
          .map((target) => `${file} → ${target}`),
      )
      expect(offending).toEqual([])
    })
  }

  it('no method uses another', () => {
    const methodOf = (path: string) => /^methods\/([^/]+)\//.exec(path)?.[1]
    const offending = below('methods').flatMap((file) =>
      importsOf(file, true)
        .filter((target) => methodOf(target) !== undefined && methodOf(target) !== methodOf(file))
        .map((target) => `${file} → ${target}`),
    )
    expect(offending).toEqual([])
  })

  it('nothing outside its folder names a method', () => {
    const ids = readdirSync(join(source, 'methods'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name)
    expect(ids.length).toBeGreaterThan(3)
    const names = new RegExp(
      `(['"\`/])(?:${ids.join('|')})\\1|\\b(?:${ids.filter((id) => id.includes('-')).join('|')})\\b`,
    )
    const outside = code.filter((file) => !/^methods\/[^/]+\//.test(file))
    expect(outside.filter((file) => names.test(textOf(file)))).toEqual([])
  })

  it('pages and components take views and compute nothing', () => {
    const shown = [...below('pages'), ...below('components'), ...below('layouts')]
    const offending = shown.flatMap((file) =>
      importsOf(file)
        .filter(own)
        .filter((target) => /^(campaign|judge|methods|format|functions|history)\//.test(target))
        .map((target) => `${file} → ${target}`),
    )
    expect(offending).toEqual([])
  })

  it('the core runs in a browser: no Node, clock, chance or locale', () => {
    const core = ['quantity', 'methods', 'judge', 'functions', 'problems', 'format', 'history', 'campaign']
      .flatMap(below)
      .filter((file) => !/\/node\/|\/registry\.ts$/.test(file))
    const banned =
      /from 'node:|\bBuffer\.|\bprocess\.|Date\.now\(|new Date\(\)|Math\.random\(|toLocale|Intl\./
    expect(core.filter((file) => banned.test(textOf(file)))).toEqual([])
  })
})

describe('files stay small enough to see whole', () => {
  const lengths = code.map((file) => ({ file, lines: textOf(file).split('\n').length }))
  it('the median source file has under 100 lines', () => {
    const sorted = lengths.map(({ lines }) => lines).sort((a, b) => a - b)
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThan(100)
  })
  it('none has over 300', () => {
    expect(lengths.filter(({ lines }) => lines > 300)).toEqual([])
  })
})

describe('types are not given up', () => {
  it('no any, no switched-off check', () => {
    const given = [
      ...code.map((file) => join('src', file)),
      ...filesBelow(join(home, 'scripts')).map((path) => relative(home, path)),
    ]
    const banned = /:\s*any(?=[,;)=|>\]}\n])|\bas any\b|<any>/
    const switchedOff = /@ts-ignore|@ts-nocheck|@ts-expect-error|biome-ignore/
    const uncommented = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
    expect(given.filter((file) => banned.test(uncommented(readFileSync(join(home, file), 'utf8'))))).toEqual(
      [],
    )
    expect(given.filter((file) => switchedOff.test(readFileSync(join(home, file), 'utf8')))).toEqual([])
  })
})

describe('the repository', () => {
  it('keeps the top level that was agreed', () => {
    const allowed =
      /^(package\.json|package-lock\.json|astro\.config\.mjs|README\.md|DEVELOPERS\.md|LICENSE|records|src|scripts|test|shared|tsconfig\.json|biome\.json|vitest\.config\.ts|node_modules|dist|\..*)$/
    expect(readdirSync(home).filter((name) => !allowed.test(name))).toEqual([])
  })
  it('holds no file over 500 kB', () => {
    const folders = ['records', 'shared', 'src', 'scripts', 'test'].map((name) => join(home, name))
    // Pictures of the browser suite are left there to be looked at; git does not hold them.
    const held = folders.flatMap(filesBelow).filter((path) => !path.includes('/shots/'))
    expect(held.filter((path) => statSync(path).size > 500_000)).toEqual([])
  })
})
