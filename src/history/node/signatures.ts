/** Signatures of commits. Git asks another program for each, which takes long: only those that decide are checked. */
import { reviewsIn } from '../reviews.ts'
import type { Commit, Signature } from '../types.ts'
import { git } from './git.ts'

/** Signed commits that review content which is there now. */
export const deciding = (commits: Iterable<Commit>, digests: ReadonlySet<string>): string[] =>
  [...commits]
    .filter(({ signature }) => signature !== 'none')
    .filter((commit) => reviewsIn(commit).some(({ digest }) => digests.has(digest)))
    .map(({ hash }) => hash)

/** A key that nobody vouches for, or that is not here, proves nothing: `not-checked`. */
const MEANING: Readonly<Record<string, Signature>> = { G: 'good', B: 'bad', R: 'bad' }

export type Checked = { readonly signature: Signature; readonly signer: string | null }

export async function checkSignatures(
  root: string,
  hashes: readonly string[],
): Promise<Map<string, Checked>> {
  if (hashes.length === 0) return new Map()
  const args = ['log', '--no-walk=unsorted', '--stdin', '-z', '--format=%H%x1f%G?%x1f%GS']
  const { out } = await git(root, args, `${hashes.join('\n')}\n`)
  return new Map(
    out
      .toString('utf8')
      .split('\0')
      .filter((entry) => entry !== '')
      .map((entry) => {
        const [hash = '', letter = '', signer = ''] = entry.trim().split('\x1f')
        const signature = MEANING[letter] ?? 'not-checked'
        return [hash, { signature, signer: signature === 'good' ? emailOf(signer) : null }]
      }),
  )
}

/** `Name <email>` of a key, or the principal of an SSH key, which is an e-mail by custom. */
const emailOf = (signer: string): string | null =>
  /<([^<>]+)>/.exec(signer)?.[1] ?? (signer.includes('@') ? signer : null)
