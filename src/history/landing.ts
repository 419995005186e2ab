/** Which states of a file count as landed: from where the history begins, and a pull request as one. */
import { readYaml } from '../format/yaml.ts'
import type { ForgePull, Version } from './types.ts'

/** Text of `begins` in `campaign.yaml`, whatever it says; null: none. */
function beginsOf(text: string): string | null {
  const read = readYaml(text.replace(/^\uFEFF/, ''))
  const value = read.ok ? read.value.begins : undefined
  return typeof value === 'string' ? value.trim() : null
}

/**
 * The commit in which `begins` of `campaign.yaml` came to say what it says; null where it says nothing. `landed` are
 * the states of that file on the main line. A text that was there before begins nothing anew: taking the line out
 * and putting it back must not wipe what happened meanwhile.
 */
export function beginning(landed: readonly Version[], textOf: (blob: string) => string): string | null {
  const values = landed.map(({ blob }) => (blob === null ? null : beginsOf(textOf(blob))))
  const now = values.at(-1) ?? null
  return now === null ? null : (landed[values.indexOf(now)]?.commit ?? null)
}

/**
 * States from the commit with which the history begins; the first is what that commit found there. Nothing of a file
 * that was gone by then.
 */
export function landedSince(
  landed: readonly Version[],
  begins: string | undefined,
  positionOf: (commit: string) => number,
): Version[] {
  if (begins === undefined) return [...landed]
  const start = positionOf(begins)
  const later = landed.filter(({ commit }) => positionOf(commit) > start)
  const found = landed[landed.length - later.length - 1]
  return found && found.blob !== null ? [{ ...found, commit: begins }, ...later] : later
}

/** Commit of the main line → the last one of the same pull request, where they stand one after the other. */
export function landingTogether(pulls: readonly ForgePull[], line: readonly string[]): Map<string, string> {
  const positions = new Map(line.map((hash, position) => [hash, position]))
  const last = new Map<string, string>()
  for (const { commits } of pulls) {
    const there = commits.flatMap((hash) => positions.get(hash) ?? []).sort((a, b) => a - b)
    const [first = 0, end = there.at(-1) ?? 0] = [there[0], there.at(-1)]
    if (there.length < 2 || end - first !== there.length - 1) continue
    for (const position of there) last.set(line[position] ?? '', line[end] ?? '')
  }
  return last
}

/** States between the commits of one pull request never stood on the main line by themselves. */
export function withoutBetween(landed: readonly Version[], last: ReadonlyMap<string, string>): Version[] {
  const kept: Version[] = []
  for (const [at, version] of landed.entries()) {
    const commit = last.get(version.commit) ?? version.commit
    const next = landed[at + 1]
    if (next && last.get(next.commit) === commit) continue
    const before = kept.at(-1)
    const same = before ? before.path === version.path && before.blob === version.blob : version.blob === null
    if (!same) kept.push({ ...version, commit })
  }
  return kept
}
