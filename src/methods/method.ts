/**
 * What a test method is. A method is numbers in, numbers out: it works on typed arrays in SI and knows neither
 * files nor uncertainty; the engine (`measure.ts`) perturbs each named source and calls `estimate` again.
 */
import type { Plain } from '../format/types.ts'
import type { FormulaFunction } from '../quantity/formula/types.ts'
import type { Kind } from '../quantity/kinds.ts'
import type { Dimension, Fault, Part, Quantity, Result, Source } from '../quantity/types.ts'
import type { Figure } from './figure.ts'
import type { Plan, PlanContext } from './plan.ts'

export type { Figure } from './figure.ts'

/** One given, column or measure: the handbook, the form, the sheet and the checks of files are made from it. */
export type Field = {
  /** `[a-z][a-z0-9_]*`; in the general schema a part in angle brackets stands for a name (`at_<station>`). */
  readonly name: string
  readonly meaning: string
  readonly kind: Kind
  /**
   * Of a measure for which the trade has no kind (its `kind` is then `number`): what it comes out in; null where that
   * follows from a given which is known only on the day.
   */
  readonly dim?: Dimension | null
  /** Other kinds of quantity that are accepted as well (a load may be a force or a moment). */
  readonly or?: readonly Kind[]
  readonly symbol?: string
  readonly source?: string
  /** Outside this range (SI) the value is refused. */
  readonly range?: { readonly low?: number; readonly high?: number }
}

export type Given = Field & {
  /** A setpoint is exact; a known needs ± or `(exact)`; a choice is one of `choices`; words are free text. */
  readonly role: 'setpoint' | 'known' | 'choice' | 'words'
  readonly required: boolean
  readonly choices?: readonly string[]
  readonly default?: string
}

export type ColumnField = Field & {
  readonly required: boolean
  /** The unit that the card writes for it: a new table begins with it. */
  readonly unit?: string
  /** What the rows of a new table begin with, one each (the entries of a checklist). */
  readonly rows?: readonly string[]
  /** Words read as text (`kind` is `text`): the values that are allowed, where the set is closed. */
  readonly choices?: readonly string[]
  /**
   * How an instrument's non-linearity and resolution floor act on fits over this column: as a ramp over the
   * column's own range, as a ramp over time, or not at all.
   */
  readonly ramp: 'own' | 'time' | 'none'
  /** True where the instrument must hold still over time: then `drift` is needed, and not stated is not known. */
  readonly hold: boolean
  /** Not a column of the table of readings: `prepare` reads it out of this one, and an instrument may be named for it. */
  readonly from?: string
  /** A clock or a counter needs no instrument record. */
  readonly instrument: 'required' | 'optional' | 'none'
}

export type MeasureField = Field & {
  /** A leak, play, friction, damping cannot be negative: below −U it bars a pass. */
  readonly positive?: boolean
  /** Counts are exact. */
  readonly exact?: boolean
}

export type CardField = {
  readonly name: string
  readonly meaning: string
  readonly required: boolean
  /** Reads the field as YAML gave it; faults carry a path below the field. */
  readonly read: (raw: Plain) => Result<unknown, readonly (Fault & { path: readonly (string | number)[] })[]>
}

export type Schema = {
  readonly givens: readonly Given[]
  readonly columns: readonly ColumnField[]
  readonly measures: readonly MeasureField[]
  readonly cardFields: readonly CardField[]
  /** Columns of which at least one set must be there, with a sentence for the message. */
  readonly alternatives?: readonly { readonly sets: readonly (readonly string[])[]; readonly say: string }[]
  /** Givens and targets of the card's own, of any dimension, that formulas in its fields speak of. */
  readonly uses?: readonly string[]
}

/** One column as the method sees it. Text columns have NaN values and `texts`. */
export type Column = {
  readonly values: Float64Array
  readonly missing?: Uint8Array
  readonly texts?: readonly string[]
  readonly dim: Dimension
  /** Size of one digit of the display or of what was written, whichever is coarser. */
  readonly resolution: number
  readonly instrument?: string
  /** Density of a U-tube's liquid, kg/m³. */
  readonly density?: number
}

export type Columns = Readonly<Record<string, Column>>

/** Givens in SI; choices and words beside them; `fields` are the card's own fields of this method. */
export type Givens = {
  readonly numbers: Readonly<Record<string, number>>
  readonly words: Readonly<Record<string, string>>
  readonly fields: Readonly<Record<string, unknown>>
  /** Dimension of each number, where a given may be of several kinds (`or`); absent: the kind of its field. */
  readonly dims?: Readonly<Record<string, Dimension>>
}

/** Chosen once from the unperturbed data and held fixed: blocks, branches, rows left out. */
export type Selection = Readonly<Record<string, unknown>>

export type Estimate = {
  /** SI; a measure that cannot be had is left out (never 0 for “not known”). */
  readonly values: Readonly<Record<string, number>>
  /** measure → orthogonal parts of its fit, sharing one pool of degrees of freedom. */
  readonly scatter: Readonly<Record<string, Readonly<Record<string, Part>>>>
  /** Standard deviation of single readings about the fit, by column, SI: decides whether resolution averages out. */
  readonly residual: Readonly<Record<string, number>>
  /** Kind of a measure whose field allows several (`or`): angular or linear by what was read. Absent: the field's. */
  readonly kinds?: Readonly<Record<string, Kind>>
  /** Dimension of a measure for which there is no kind; goes before `kinds`. */
  readonly dims?: Readonly<Record<string, Dimension>>
}

export type Remark = {
  /** `bars-pass`: at best undetermined. `note`: said, no effect. */
  readonly effect: 'bars-pass' | 'note'
  /** One sentence; appears in `reasons` of the run. */
  readonly text: string
  /** Only criteria over these measures are barred; absent: all. */
  readonly measures?: readonly string[]
}

export type Measures = Readonly<Record<string, Quantity>>

/** Further sources that only the method knows (an unmeasured barometer, the unlike model of a path). */
export type ExtraSource = {
  readonly source: Source
  readonly label: string
  readonly shape: 'normal' | 'rectangular'
  /** Columns and givens moved by one standard uncertainty times z. */
  readonly perturb: (columns: Columns, givens: Givens, z: number) => { columns: Columns; givens: Givens }
}

/** An instrument as planning and `rehearse` need it: standard uncertainties in SI, null where not known. */
export type InstrumentModel = {
  readonly id: string
  readonly label: string
  readonly resolution: number
  readonly gain: number | null
  readonly offset: number | null
  readonly linearity: number | null
  readonly hysteresis: number | null
  /** Per second. */
  readonly drift: number | null
  /** Of the calibration itself; acts as an offset. */
  readonly calibration?: number
  readonly shape: 'normal' | 'rectangular'
  readonly range?: { readonly low: number; readonly high: number }
  readonly density?: number
}

export type Instruments = Readonly<Record<string, InstrumentModel>>

/** What to do next, in one sentence, after judging. */
export type Advice = { readonly text: string; readonly measures?: readonly string[] }

export type JudgedTerm = {
  readonly criterion: string
  readonly verdict: 'pass' | 'fail' | 'undetermined'
  readonly measures: readonly string[]
  readonly value: number
  readonly limits: readonly number[]
  readonly direction: 'below' | 'above' | 'between'
  /** What each measure alone would have to be, all else as it came out, for the term to stand on its limit. */
  readonly needed?: Readonly<Record<string, number>>
}

export type Method = {
  readonly id: string
  readonly title: string
  /** One sentence: what question it answers. */
  readonly question: string
  readonly cautions: readonly string[]
  /** The general schema, for the handbook. */
  readonly schema: Schema
  /** The schema for one card and the columns that a run has; absent: the general one. */
  readonly describe?: (
    fields: Readonly<Record<string, unknown>>,
    columns: readonly string[],
    /** Dimensions of the columns, where the readings are at hand: they settle what is left open by `or`. */
    dims?: Readonly<Record<string, Dimension>>,
    /** Names of the givens at hand (card, article, run, targets): what is not there settles the rest of it. */
    given?: readonly string[],
    /** Dimensions of those among them that are written as quantities. */
    givenDims?: Readonly<Record<string, Dimension>>,
  ) => Schema
  /**
   * Checks that need several of the card's own fields together, or its givens and targets (null: known only on the
   * day). Paths begin at the card.
   */
  readonly checkFields?: (
    fields: Readonly<Record<string, unknown>>,
    given: Readonly<Record<string, Dimension | null>>,
  ) => readonly (Fault & { path: readonly (string | number)[] })[]
  readonly functions?: Readonly<Record<string, FormulaFunction>>
  /**
   * Whether what is handed to a parameter of a formula function is what the parameter means, where dimensions cannot
   * tell (a stiffness at the cockpit for one at the surface). `names` are the measures of a run of this method and the
   * givens that the argument rests on, `words` those of that run. Null: nothing is wrong.
   */
  readonly misuse?: (
    parameter: string,
    names: readonly string[],
    words: Readonly<Record<string, string>>,
  ) => Omit<Fault, 'start' | 'end'> | null
  /** Checks that need columns and givens together (a missing barometer, reduced pressure). Faults name a column, a given, or neither. */
  readonly validate?: (
    columns: Columns,
    givens: Givens,
  ) => readonly {
    readonly code: string
    readonly message: string
    readonly severity?: 'error' | 'warning'
    readonly why?: string
    readonly hint?: string
    readonly column?: string
    readonly given?: string
    readonly row?: number
  }[]
  /**
   * Columns that are read out of others (values in text cells, what an instrument makes sure), added before
   * anything else happens and called once; what it adds under a name of the schema is perturbed as any column.
   * Columns that are already there are kept, so that calling it twice changes nothing.
   */
  readonly prepare?: (columns: Columns, givens: Givens, instruments: Instruments) => Columns
  readonly select: (columns: Columns, givens: Givens) => Selection
  /** With `valuesOnly`, as of the many estimates on moved readings, all but the values may be left empty. */
  readonly estimate: (
    columns: Columns,
    givens: Givens,
    selection: Selection,
    valuesOnly?: boolean,
  ) => Result<Estimate, string>
  readonly sources?: (columns: Columns, givens: Givens, selection: Selection) => readonly ExtraSource[]
  /** Measures that follow from the uncertainty of others (a detection limit); the engine adds them at the end. */
  readonly complete?: (measures: Measures) => Measures
  /** What bars a pass, at confidence p (0.95 under `simple`). */
  readonly conditions: (
    measures: Measures,
    columns: Columns,
    givens: Givens,
    selection: Selection,
    p: number,
  ) => readonly Remark[]
  /** A plausible article, for planning a card that no run has told anything of yet: the truth of a rehearsal. */
  readonly nominal?: (givens: Givens) => Readonly<Record<string, number>>
  /** Expected columns for a given truth and instruments, with noise and digits: planning, simulation, coverage. */
  readonly rehearse: (
    givens: Givens,
    truth: Readonly<Record<string, number>>,
    instruments: Instruments,
    seed: number,
  ) => Columns
  readonly figures: (
    measures: Measures,
    columns: Columns,
    givens: Givens,
    selection: Selection,
  ) => readonly Figure[]
  /** What must be settled although no criterion says so (an entry of a checklist left open). */
  readonly openItems?: (
    measures: Measures,
    columns: Columns,
    givens: Givens,
  ) => readonly { readonly id: string; readonly title: string; readonly closes: string }[]
  readonly advise?: (
    measures: Measures,
    judged: readonly JudgedTerm[],
    givens: Givens,
    /** As computed with: corrections applied, prepared. */
    columns?: Columns,
  ) => readonly Advice[]
  /** What to do and to expect, before the test. */
  readonly plan?: (givens: Givens, instruments: Instruments, context: PlanContext) => Plan
}
