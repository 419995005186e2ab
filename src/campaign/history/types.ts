/** What git adds to a run: who brought it, who reviewed exactly this content, what changed since, and other verdicts. */
import type { Signature } from '../../history/types.ts'
import type { Judgement, Verdict } from '../../judge/types.ts'

export type ReviewKind = 'forge' | 'signed' | 'trailer'

export type Review = {
  /** Id of the person; the e-mail or login where nobody in `people.yaml` has it. */
  readonly by: string
  readonly how: ReviewKind
  readonly commit: string
  /** ISO 8601. */
  readonly when: string
}

export type NotCounted = Review & {
  readonly reason:
    | 'own work'
    | 'without the role review'
    | 'not in people.yaml'
    | 'this kind of review is not accepted here'
    | 'the signature is bad'
    | 'of older content'
}

/** A commit that changed the file of a run or its data file, or with which they landed. */
export type FileCommit = {
  readonly commit: string
  /** Id of the person; the name of the author where nobody in `people.yaml` has the e-mail. */
  readonly by: string
  /** ISO 8601. */
  readonly when: string
  readonly subject: string
  readonly did: 'added' | 'changed' | 'renamed' | 'landed' | 'taken away'
  /** Of the run, after it. */
  readonly path: string
  readonly onMainLine: boolean
  readonly signature: Signature
  /** Protected fields that it changed; null: the text of a state that stood only on a branch is not at hand. */
  readonly changes: readonly { readonly at: string; readonly before: string; readonly after: string }[] | null
}

/** A protected field that is not what it was when the record landed. */
export type Change = {
  /** `given volume`, `readings row 30 column pressure`: the grammar stands in `addresses.ts`. */
  readonly at: string
  readonly before: string
  readonly after: string
  /** An amendment names it, and what it was. */
  readonly amended: boolean
}

export type Amendment = {
  readonly when: string
  readonly by: string
  readonly at: string
  readonly was: string
  readonly why: string
}

export type Provenance = {
  readonly recorded: { readonly commit: string; readonly by: string; readonly when: string } | null
  /** When it reached the main line. */
  readonly landed: { readonly commit: string; readonly when: string } | null
  /** Those that count: of exactly this content, by a person who may, of a kind that the campaign accepts. */
  readonly reviewed: readonly Review[]
  readonly notCounted: readonly NotCounted[]
  /** Of the commit that recorded it; null: not known. */
  readonly signature: Signature | null
  readonly amended: readonly Amendment[]
  /** It was withdrawn only after it had landed. */
  readonly voidedSince: boolean
  /** What is protected and changed after landing; null: not known. */
  readonly changes: readonly Change[] | null
  /** Day of the newest of these changes, `YYYY-MM-DD`. */
  readonly changedOn: string | null
  /** What made its file what it is, oldest first; null: not known. */
  readonly commits: readonly FileCommit[] | null
  readonly state: 'uncommitted' | 'proposed' | 'landed' | 'unknown'
}

/** How a criterion of today compares with that of the card as run, for this run. */
export type Shift = {
  readonly criterion: string
  readonly is: 'same' | 'stricter' | 'laxer' | 'not comparable'
}

/** The run judged by its card, its instruments and the campaign's rule as they were when it was made. */
export type AsRun = {
  readonly judgements: readonly Judgement[]
  readonly verdict: Verdict
  /** Commit of the main line whose state was in force; null: the card had not landed. */
  readonly revision: string | null
  /** When that state reached the main line, ISO 8601. */
  readonly when: string | null
  /** The card reached the main line only after the test: its limits were written after the reading. */
  readonly writtenAfter: boolean
  /** The card came, or changed in what it judges by, in the landing that brought the run. */
  readonly togetherWithRun: boolean
  /** Somebody who did not do the test reviewed the card as it is today. */
  readonly cardReviewed: boolean
  /** Files that differ from today's in what they judge by. */
  readonly differs: readonly string[]
  readonly shifts: readonly Shift[]
  /** Not all of these changes are reviewed: until then the worse verdict counts. */
  readonly counts: boolean
  /** Why that state cannot be judged by any more; null where it can. */
  readonly unreadable: string | null
}

/** The run with its protected fields as they landed, judged by today's card and by the card as run. */
export type AsLanded = {
  readonly judgements: readonly Judgement[]
  readonly verdict: Verdict
  /** Until the changes are amended and reviewed the worse verdict counts. */
  readonly counts: boolean
  readonly unreadable: string | null
}

/** A landed state of a card that judged otherwise than the one before it. Nulls: not landed. */
export type CardVersion = {
  readonly commit: string | null
  readonly when: string | null
  readonly by: string | null
  /** Criterion → formula, as written. */
  readonly criteria: Readonly<Record<string, string>>
  /** Commits of the main line that left the card judging so: this one, and later ones that changed only other things. */
  readonly commits: readonly string[]
  /** Reviews of the state with which it came, and of later ones that judge the same. */
  readonly reviewed: readonly Review[]
}

/** A run file that was on the main line and is no more. Nulls: taken away, and not committed yet. */
export type Gone = {
  readonly commit: string | null
  readonly when: string | null
  readonly by: string | null
}
