/** The decision rule of a criterion, as written. */
import { refuse } from '../../quantity/faults.ts'
import type { Result } from '../../quantity/types.ts'
import type { Rule } from '../types.ts'

/** `guarded 95 %` or `simple`. A confidence of half or less would pass what more likely fails. */
export function readRule(text: string): Result<Rule> {
  if (text === 'simple') return { ok: true, value: { kind: 'simple', text } }
  const expected = ['guarded 95 %', 'simple']
  const found = /^guarded\s+(\d+(?:\.\d+)?)\s*%$/.exec(text)
  if (!found) return refuse('rule/syntax', `\`${text}\` is no decision rule`, 0, text.length, { expected })
  const percent = Number(found[1])
  if (percent <= 50 || percent >= 100) {
    const message = `a guarded rule asks for more than 50 % and less than 100 %, not ${found[1]} %`
    return refuse('rule/syntax', message, 0, text.length, { expected })
  }
  return { ok: true, value: { kind: 'guarded', p: percent / 100, text } }
}
