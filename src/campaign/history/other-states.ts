/** Runs judged under other states of their files than those of today: read and computed anew, in as few goes as can be. */
import { type MethodSchemas, readRecords, type TextFile } from '../../format/records.ts'
import type { Records } from '../../format/types.ts'
import type { Judgement, Verdict } from '../../judge/types.ts'
import type { Method } from '../../methods/method.ts'
import type { Problem } from '../../problems/types.ts'
import { type CardFormulas, type Functions, functionsFor, parseCard } from '../formulas.ts'
import { computeRun } from '../run.ts'
import type { Run } from '../types.ts'
import type { OldFile } from './past.ts'
import type { RunText } from './run-text.ts'

export type StateRequest = {
  readonly id: string
  /** Which text of the run: two of one run are never read together. */
  readonly as: 'today' | 'landed' | 'gone'
  readonly path: string
  readonly cardPath: string
  readonly run: RunText
  /** Files in place of those of today. */
  readonly old: readonly OldFile[]
}

export type StateResult =
  | {
      readonly ok: true
      readonly run: Run
      readonly judgements: readonly Judgement[]
      readonly verdict: Verdict
    }
  | { readonly ok: false; readonly why: string }

export type StateContext = {
  readonly methods: Readonly<Record<string, Method>>
  readonly functions: Functions
  /** Texts of today, and of files that are gone as they were last. */
  readonly textOf: (path: string) => string | undefined
  readonly articles: readonly string[]
  /** Where the file of an id lies, or lay. */
  readonly pathOf: (id: string) => string | undefined
  /** Runs of today, whose results may be givens. */
  readonly runs: ReadonlyMap<string, Run>
}

const keyOf = ({ as, old, cardPath }: StateRequest): string =>
  [as, cardPath, ...old.map(({ path, blob }) => `${path} ${blob}`).sort()].join('\n')

/** Every id that the texts might name is taken along: references must lead somewhere. */
const named = (texts: readonly string[], { pathOf, textOf }: StateContext): TextFile[] => {
  const ids = new Set(texts.flatMap((text) => text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? []))
  return [...ids].flatMap((id) => {
    const path = pathOf(id)
    const text = path === undefined ? undefined : textOf(path)
    return path === undefined || text === undefined ? [] : [{ path, text }]
  })
}

const filesFor = (requests: readonly StateRequest[], context: StateContext): TextFile[] => {
  const { textOf } = context
  const files = new Map<string, string>()
  const put = (path: string, text: string | null | undefined): void => {
    if (text !== undefined && text !== null) files.set(path, text)
  }
  const cards = [...new Set(requests.map(({ cardPath }) => cardPath))]
  for (const path of ['shared/campaign.yaml', 'shared/people.yaml', ...context.articles, ...cards])
    put(path, textOf(path))
  for (const { path, text } of requests[0]?.old ?? []) put(path, text)
  const own = [...cards.map((path) => files.get(path) ?? ''), ...requests.map(({ run }) => run.text)]
  for (const { path, text } of named(own, context)) if (!files.has(path)) files.set(path, text)
  for (const { path, run } of requests) {
    files.set(path, run.text)
    if (run.data) put(run.data.path, run.data.text)
  }
  return [...files].map(([path, text]) => ({ path, text }))
}

const whyNot = (problems: readonly Problem[], paths: readonly string[]): string => {
  const error = problems.find(({ severity, at }) => severity === 'error' && paths.includes(at.file))
  return error ? `${error.at.file}: ${error.message}` : 'its files cannot be read together'
}

const judge = (
  request: StateRequest,
  records: Records,
  problems: readonly Problem[],
  formulas: Map<string, CardFormulas>,
  context: StateContext,
): StateResult => {
  const record = records.runs[request.id]
  const card = record && records.cards[record.card]
  const method = card && context.methods[card.method]
  if (!record || !card || !method) {
    const paths = [request.path, request.run.data?.path ?? '', request.cardPath]
    return { ok: false, why: whyNot(problems, paths) }
  }
  const parsed = formulas.get(card.id) ?? parseCard(card)
  formulas.set(card.id, parsed)
  const { run } = computeRun({
    record,
    card,
    article: record.article ?? Object.keys(card.articles)[0] ?? '',
    method,
    formulas: parsed,
    functions: functionsFor(method, context.functions),
    instruments: records.instruments,
    runs: context.runs,
  })
  return { ok: true, run, judgements: run.judgements, verdict: run.wouldBe }
}

/** In the order of the requests. A state that cannot be read any more says why. */
export const judgeStates = (
  requests: readonly StateRequest[],
  context: StateContext,
): readonly StateResult[] => {
  const groups = new Map<string, StateRequest[]>()
  for (const request of requests) {
    const key = keyOf(request)
    const group = groups.get(key)
    if (group) group.push(request)
    else groups.set(key, [request])
  }
  const results = new Map<StateRequest, StateResult>()
  for (const group of groups.values()) {
    const schemas: MethodSchemas = context.methods
    const { records, problems } = readRecords(filesFor(group, context), schemas)
    const formulas = new Map<string, CardFormulas>()
    for (const request of group) {
      const lost = request.old.find(({ text }) => text === null)
      results.set(
        request,
        lost
          ? { ok: false, why: `${lost.path} of that day is not at hand` }
          : judge(request, records, problems, formulas, context),
      )
    }
  }
  return requests.map((request) => results.get(request) as StateResult)
}
