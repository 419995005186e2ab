/** A stiffness at the cockpit is none at the surface, though both are moment per angle. */
import type { Method } from '../method.ts'

/** Measures at the end that was loaded; `surface_stiffness` and the segments are at the surface always. */
const AT_LOADED_END = [
  'stiffness',
  'stiffness_positive',
  'stiffness_negative',
  'secant_at_limit',
  'compliance',
]

/** An argument that brings in the gearing has taken it to the surface itself. */
export const misuse: NonNullable<Method['misuse']> = (parameter, names, words) => {
  if (parameter !== 'surface_stiffness' || words.loaded_end !== 'cockpit') return null
  const measure = names.find((name) => AT_LOADED_END.includes(name))
  if (!measure || names.includes('gearing')) return null
  return {
    code: 'circuit-stiffness/not-at-surface',
    message: `\`${measure}\` is that at the cockpit, where the load was applied; the stiffness at the surface is asked for`,
    why: 'the two differ by the gearing squared, and the air works on the surface',
    hint:
      measure === 'stiffness'
        ? 'write `surface_stiffness`, and give `gearing` (surface angle per cockpit angle)'
        : 'write `surface_stiffness`, or divide a stiffness by `gearing^2`',
  }
}
