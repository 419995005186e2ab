/** What a record says to have taken out again: `<run id>#<what was fitted>`. */
import { makeProblem } from '../../problems/make.ts'
import type { Problem } from '../../problems/types.ts'
import type { SourceFile } from '../types.ts'
import type { World } from '../world.ts'
import { refer, unknown } from './reference.ts'

export function removedProblems(removed: readonly string[], source: SourceFile, world: World): Problem[] {
  return removed.flatMap((entry, index) => {
    const path = ['removed', index]
    const [run = '', fitted, more] = entry.split('#')
    if (fitted === undefined || fitted === '' || more !== undefined) {
      const hint =
        'write the run, `#`, and the id under its `fitted`, as in `2026-03-04-0912-tank-leak#vent-plug`'
      const message = `\`${entry}\` does not say what was taken out`
      return [makeProblem({ code: 'reference/removed', message, at: source.locate(path), hint })]
    }
    const missing = refer(world, ['run'], run, source, path)
    const draft = world.runs.get(run)
    if (missing.length > 0 || !draft) return missing
    const ids = draft.fields.fitted.map((thing) => thing.id)
    if (ids.includes(fitted)) return []
    return [
      unknown(
        `nothing called \`${fitted}\` was fitted in \`${run}\``,
        fitted,
        ids,
        source.locate(path),
        undefined,
      ),
    ]
  })
}
