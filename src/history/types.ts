/**
 * What git knows of the files of a campaign, as plain data. `node/read.ts` makes it in a fixed number of git
 * processes; everything else here is pure. Paths are relative to the root, with forward slashes.
 */

export type Signature = 'good' | 'bad' | 'not-checked' | 'none'

/** A line `Key: value` of a message. */
export type Trailer = {
  /** As written. */
  readonly key: string
  readonly value: string
  /** Which paragraph it stands in; the subject is 0. A squash puts several messages into one. */
  readonly paragraph: number
}

export type Commit = {
  readonly hash: string
  readonly parents: readonly string[]
  readonly author: { readonly name: string; readonly email: string }
  /** ISO 8601 with offset. */
  readonly authored: string
  readonly committed: string
  /** Of `committed`, in ms. */
  readonly epoch: number
  readonly subject: string
  /** In the order of the message, from every paragraph but the subject. */
  readonly trailers: readonly Trailer[]
  /** Checked for reviews of content that is there now; of other signed commits `not-checked`. */
  readonly signature: Signature
  /** E-mail of the key's owner, where the signature is good. */
  readonly signer: string | null
}

/** The state that a file took in a commit. */
export type Version = {
  readonly commit: string
  /** The path that it had then. */
  readonly path: string
  /** null: taken away. */
  readonly blob: string | null
}

export type FileHistory = {
  /** As it is now; of a file that is gone, as it was last. */
  readonly path: string
  /**
   * States on the main line (first parents), oldest first; exact renames followed. Commits that one pull request
   * brought (rebase) are one state, of the last of them. The first is the state where the history of the campaign
   * begins. Empty: never landed.
   */
  readonly landed: readonly Version[]
  /**
   * Every commit that changed it, on the main line or a branch that is part of HEAD or of the main line, oldest first
   * (what a branch brought before the commit that landed it), also from before the history of the campaign begins.
   */
  readonly touched: readonly Version[]
  /** The state in HEAD; null: not in HEAD. */
  readonly head: string | null
}

/** An approval on the forge, as a step of CI wrote it down: `login` approved a pull request as it stood at `commit`. */
export type ForgeApproval = {
  readonly login: string
  readonly commit: string
  /** ISO 8601. */
  readonly when: string
}

export type ForgePull = {
  readonly number: number
  /** The commit of the main line that brought it, and those that it was made of where they are on the main line. */
  readonly commits: readonly string[]
  /** Only approvals of the last state of the pull request. */
  readonly approvals: readonly ForgeApproval[]
  /** What that last state changed: path → blob. */
  readonly files: Readonly<Record<string, string>>
}

export type KnownHistory = {
  readonly state: 'known'
  readonly head: string
  /**
   * First parents of the main line, oldest first, from where the history of the campaign begins; up to HEAD where HEAD
   * is on it (an old state looked at again knows nothing of what came later).
   */
  readonly line: readonly string[]
  /** True where HEAD is on the main line. */
  readonly onMain: boolean
  readonly commits: ReadonlyMap<string, Commit>
  /** Files under `records/` and `shared/` that git knows, by path now; landed ones that are gone, by their last path. */
  readonly files: ReadonlyMap<string, FileHistory>
  /** Files whose content is not that of HEAD. */
  readonly uncommitted: ReadonlyMap<string, 'added' | 'changed' | 'removed'>
  /** Blob of each file as it lies there now (filters of git applied), so that a checkout with CRLF or LFS is the same. */
  readonly blobs: ReadonlyMap<string, string>
  /** Digest of what a review of a record covers: the record by its id, and its data file. By path of the record. */
  readonly digests: ReadonlyMap<string, string>
  /** The same of earlier landed states of cards: path now, a blank, blob → digest. */
  readonly pastDigests?: ReadonlyMap<string, string>
  /** Texts of landed states under `records/` and `shared/` that are not those of today, by blob. */
  readonly texts: ReadonlyMap<string, string>
  readonly pulls: readonly ForgePull[]
  /** The commit with which the history of the campaign begins (`begins` of `campaign.yaml`); null: with the repository. */
  readonly begins: string | null
  /** Said once, without harm: a review file that is tracked and so not believed … */
  readonly notes: readonly string[]
}

export type UnknownHistory = {
  readonly state: 'unknown'
  readonly why:
    | 'no-git'
    | 'old-git'
    | 'not-a-repository'
    | 'not-trusted'
    | 'bare'
    | 'shallow'
    | 'no-commit'
    | 'no-main'
    | 'git-failed'
    /** Nobody asked. */
    | 'not-read'
  /** One sentence each: what is missing, and how to get it. */
  readonly message: string
  readonly hint: string
}

export type History = KnownHistory | UnknownHistory
