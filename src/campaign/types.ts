/** The one object that everything else reads views of. */
import type {
  CardRecord,
  InstrumentRecord,
  ReadinessRecord,
  Records,
  ReworkRecord,
  RunRecord,
} from '../format/types.ts'
import type { Judgement, Verdict } from '../judge/types.ts'
import type {
  Advice,
  Columns,
  Figure,
  Givens,
  Measures,
  Method,
  Schema,
  Selection,
} from '../methods/method.ts'
import type { Plan } from '../methods/plan.ts'
import type { Problem } from '../problems/types.ts'
import type { Draws } from '../quantity/draws.ts'
import type { Quantity, Unit } from '../quantity/types.ts'
import type { AsLanded, AsRun, CardVersion, Gone, Provenance } from './history/types.ts'

export type { Provenance } from './history/types.ts'

/** The columns of a run with corrections applied, the givens in SI with their sources, and what was computed. */
export type Computed = {
  readonly method: Method
  readonly schema: Schema
  readonly columns: Columns
  readonly givens: Givens
  /** Every numeric given with its budget: what was in force for this run. */
  readonly inputs: Readonly<Record<string, Quantity>>
  readonly targets: Readonly<Record<string, Target>>
  readonly selection: Selection
  readonly measures: Measures
  readonly derived: Measures
  /** Joint draws by measure and given, batch by batch; only where the card asks for Monte Carlo. */
  readonly draws?: (batch: number) => Draws
  readonly figures: readonly Figure[]
}

export type Target = {
  readonly formula: string
  readonly worked: string
  readonly value: Quantity
  readonly unit: Unit
}

export type InstrumentUse = {
  readonly column: string
  readonly instrument: InstrumentRecord
  /** `on` date of the calibration in force on the day; null: none. */
  readonly calibration: string | null
  readonly inForce: boolean
  readonly due: string | null
}

export type Run = {
  readonly id: string
  readonly record: RunRecord
  readonly card: CardRecord
  readonly article: string
  /** 1, 2, 3 …: which round of its card and article it belongs to. */
  readonly round: number
  readonly instruments: readonly InstrumentUse[]
  /** Null where the method could not compute; then `reasons` say why. */
  readonly computed: Computed | null
  /** By the card, the instruments and the record of today. */
  readonly judgements: readonly Judgement[]
  readonly presentVerdict: Verdict
  /** For each criterion the judgement that counts: the worst of `judgements` and of states whose change is not reviewed. */
  readonly counting: readonly Judgement[]
  /** What counts. Null for a void run; `wouldBe` is what it would have had. */
  readonly verdict: Verdict | null
  readonly wouldBe: Verdict
  readonly reasons: readonly string[]
  /** Said without effect on the verdict. */
  readonly notes: readonly string[]
  readonly advice: readonly Advice[]
  /** Unit to show each measure in. */
  readonly units: Readonly<Record<string, Unit>>
  /** The rework or run that ended its round; null where its result still stands. */
  readonly overtakenBy: { readonly id: string; readonly what: string; readonly when: string } | null
  readonly provenance: Provenance
  /** Null: history is not known. */
  readonly asRun: AsRun | null
  /** Null: nothing protected changed since it landed, or history is not known. */
  readonly asLanded: AsLanded | null
  /** Null: its file is there. */
  readonly gone: Gone | null
}

export type CardStatus = 'not-run' | 'pass' | 'fail' | 'undetermined' | 'due-again' | 'conceded'

export type Round = {
  readonly number: number
  /** What began it; null for the first. */
  readonly begunBy: { readonly id: string; readonly what: string; readonly when: string } | null
  readonly runs: readonly string[]
  readonly status: 'pass' | 'fail' | 'undetermined' | 'not-run' | 'conceded'
  /** Judged anew over the pooled runs, or as a run counts where that is worse; of the single run where there is one. */
  readonly judgements: readonly Judgement[]
  /** Verdict of each criterion by the cards as run, over the runs that decide; null: history is not known. */
  readonly asRun: Readonly<Record<string, Verdict>> | null
  readonly measures: Measures
  readonly counts: {
    readonly pass: number
    readonly fail: number
    readonly undetermined: number
    readonly stopped: number
    readonly void: number
  }
}

/** Whether the instruments that a card asks for can decide a criterion, at the limit. */
export type Decidable = {
  readonly criterion: string
  readonly text: string
  readonly verdict: 'yes' | 'hardly' | 'no' | 'not known'
  /** Expanded uncertainty expected at the limit, in the unit shown; null where not known. */
  readonly U: number | null
  readonly ratio: number | null
  readonly unit: string
}

/** One card on one article. */
export type CardState = {
  readonly id: string
  readonly card: CardRecord
  readonly method: Method | null
  readonly article: string
  readonly status: CardStatus
  readonly rounds: readonly Round[]
  /** Current round number, counting an empty one. */
  readonly round: number
  readonly dueBecause: { readonly id: string; readonly what: string; readonly when: string } | null
  readonly targets: Readonly<Record<string, Target>>
  readonly decidable: readonly Decidable[]
  /** Derived values of the card that follow from givens and targets alone: known before the test. */
  readonly expected: Readonly<Record<string, Target>>
  /** What the method says before the test; null where it says nothing, or its givens are missing. */
  readonly plan: Plan | null
  readonly gates: readonly string[]
  /** What it asked for over time, oldest first; null: history is not known. */
  readonly versions: readonly CardVersion[] | null
}

export type ItemKind =
  | 'failed-criterion'
  | 'undetermined-criterion'
  | 'not-run'
  | 'too-few-runs'
  | 'due-again'
  | 'prerequisite'
  | 'source-newer'
  | 'basis-differs'
  | 'calibration'
  | 'out-of-range'
  | 'instrument-worse'
  | 'deviation'
  | 'inspection-open'
  | 'not-removed'
  | 'beyond-stop'
  | 'instrument-found-wrong'
  | 'same-readings'
  | 'two-roles'
  | 'concession-expired'
  | 'condition'
  | 'not-computed'
  | 'not-reviewed'
  | 'changed'
  | 'amendment-unreviewed'
  | 'voided'
  | 'run-gone'
  | 'limit-moved'
  | 'limit-with-reading'
  | 'off-gate'
  | 'begins'
  | 'discrepancy'
  | 'action'
  | 'concession'

/** Something that must be settled. Stable id; blocks the gates named. */
export type OpenItem = {
  readonly id: string
  readonly kind: ItemKind
  readonly title: string
  /** Ids of runs, cards, instruments, articles … */
  readonly about: readonly string[]
  readonly gates: readonly string[]
  readonly owner: string
  /** `YYYY-MM-DD` */
  readonly since: string
  /** What closes it, in one sentence. */
  readonly closes: string
  /** Ids of what a review would close it for; absent where no review does. */
  readonly toReview?: readonly string[]
  readonly due: string | null
  readonly raisedByHand: boolean
}

export type GateState = {
  readonly id: string
  readonly title: string
  readonly order: number
  readonly state: 'held' | 'clear' | 'released'
  readonly overtaken: boolean
  /** Item or gate ids. */
  readonly heldBy: readonly string[]
  /** What holds it, in words; empty where nothing does. */
  readonly words: readonly string[]
  readonly released: ReadinessRecord | null
  readonly needs: readonly string[]
  readonly cards: readonly { readonly card: string; readonly article: string; readonly status: CardStatus }[]
}

/** In SI, with the side that is not accepted. */
export type TrendLimit = {
  readonly value: number
  readonly side: 'below' | 'above'
  readonly text: string
}

export type TrendPoint = {
  readonly run: string
  readonly round: number
  readonly when: string
  readonly value: Quantity
  readonly verdict: Verdict | null
  /** What the card of today asks of this run. */
  readonly limits: readonly TrendLimit[]
  /** What its card asked for when the run was made; null: not known, or it cannot be judged by any more. */
  readonly limitsAsRun: readonly TrendLimit[] | null
}

/** One measure that a criterion uses, over the rounds of one card and article. */
export type Trend = {
  readonly card: string
  readonly article: string
  readonly measure: string
  readonly unit: Unit
  readonly points: readonly TrendPoint[]
  /** Those that hold for the newest run. */
  readonly limits: readonly TrendLimit[]
  readonly reworks: readonly {
    readonly id: string
    readonly title: string
    readonly when: string
    readonly beforeRound: number
  }[]
  /** Gain from round to round and whether it is more than the uncertainty of the difference. */
  readonly gains: readonly {
    readonly from: number
    readonly to: number
    readonly gain: Quantity
    readonly significant: boolean | null
  }[]
}

export type Campaign = {
  readonly asOf: string
  readonly tool: string
  readonly records: Records
  /** In order of time. */
  readonly runs: readonly Run[]
  readonly cards: readonly CardState[]
  readonly reworks: readonly ReworkRecord[]
  /** Open only. */
  readonly items: readonly OpenItem[]
  /** Raised by hand and closed. */
  readonly closedItems: readonly OpenItem[]
  readonly gates: readonly GateState[]
  readonly trends: readonly Trend[]
  readonly problems: readonly Problem[]
}
