/** The JSON of `check` as a schema: its JSON Schema is published on the site, and a test holds the output to it. */
import { z } from 'zod'

const verdict = z.enum(['pass', 'fail', 'undetermined'])
const number = z.number()

const spread = {
  value: number.describe('in `unit`'),
  u: number.nullable().describe('standard uncertainty; null: not known'),
  unit: z.string(),
}

const measure = z.strictObject({
  ...spread,
  dof: number.nullable().describe('effective degrees of freedom; null: infinite, or u not known'),
  U95: number.nullable().describe('expanded uncertainty for 95 %, factor from the degrees of freedom'),
})

const term = z.strictObject({
  ...spread,
  limits: z.array(number),
  margin: number.describe('what is left to the nearer limit; negative beyond it'),
  probability: number.nullable().describe('that the true value conforms'),
  verdict,
})

const criterion = z.strictObject({
  id: z.string(),
  accept: z.string(),
  rule: z.string(),
  verdict,
  asRun: verdict
    .nullable()
    .describe(
      'by the card as it was when the run was made; null without history, or where that card did not ask it',
    ),
  terms: z.array(term),
})

const provenance = z.strictObject({
  recorded: z.strictObject({ commit: z.string(), by: z.string(), when: z.string() }).nullable(),
  reviewed: z.array(
    z.strictObject({
      by: z.string(),
      how: z.enum(['forge', 'signed', 'trailer']),
      commit: z.string(),
    }),
  ),
  amended: z.array(
    z.strictObject({ when: z.string(), by: z.string(), at: z.string(), was: z.string(), why: z.string() }),
  ),
  state: z.enum(['uncommitted', 'proposed', 'landed', 'unknown']),
})

const run = z.strictObject({
  id: z.string(),
  card: z.string(),
  article: z.string(),
  when: z.string(),
  round: z.int().positive(),
  verdict: verdict.nullable().describe('null: the run is void'),
  void: z.boolean(),
  stopped: z.boolean(),
  reasons: z.array(z.string()).describe('why undetermined, or never a pass'),
  measures: z.record(z.string(), measure),
  criteria: z.array(criterion),
  provenance,
})

const card = z.strictObject({
  id: z.string(),
  method: z.string(),
  article: z.string(),
  status: z.enum(['not-run', 'pass', 'fail', 'undetermined', 'due-again', 'conceded']),
  round: z.int().positive(),
  criteria: z.array(criterion).describe('of the pooled runs of the newest round'),
  targets: z.record(z.string(), z.strictObject(spread)),
})

const problem = z.strictObject({
  severity: z.enum(['error', 'warning']),
  code: z.string(),
  message: z.string(),
  hint: z.string().describe('empty where there is none'),
  file: z.string(),
  line: z.int().positive(),
  column: z.int().positive(),
})

const item = z.strictObject({
  id: z.string(),
  kind: z.string(),
  title: z.string(),
  about: z.array(z.string()),
  gates: z.array(z.string()),
  owner: z.string(),
  since: z.string(),
  closes: z.string(),
})

export const checkSchema = z.strictObject({
  schema: z.literal(1),
  tool: z.string(),
  problems: z.array(problem),
  runs: z.array(run),
  cards: z.array(card).describe('one a card and article'),
  gates: z.array(
    z.strictObject({
      id: z.string(),
      state: z.enum(['held', 'clear', 'released']),
      overtaken: z.boolean(),
      heldBy: z.array(z.string()).describe('ids of items or gates'),
    }),
  ),
  items: z.array(item),
})

export const checkJsonSchema = (): object => z.toJSONSchema(checkSchema)
