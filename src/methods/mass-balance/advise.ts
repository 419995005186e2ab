/** What weight brings it inside, once judged. */
import { missedOn, ownLimit, rounded } from '../advice-text.ts'
import type { Advice, Givens, JudgedTerm, Measures } from '../method.ts'

const grams = (mass: number): string => `${rounded(1000 * mass, 3)} g`

export const advise = (
  measures: Measures,
  judged: readonly JudgedTerm[],
  givens: Givens,
): readonly Advice[] =>
  missedOn(judged, 'unbalance').flatMap((term): Advice[] => {
    const unbalance = measures.unbalance?.value
    const limit = ownLimit(term, measures)
    const arm = givens.numbers.balance_arm
    if (unbalance === undefined || limit === null) return []
    const beyond = term.direction === 'below' ? unbalance - limit : limit - unbalance
    if (!(beyond > 0)) return []
    const heavy = unbalance > limit ? 'tail' : 'nose'
    const by = `It is ${heavy}-heavy beyond the limit by ${rounded(beyond, 3)} kg·m`
    if (arm === undefined || arm === 0)
      return [
        {
          text: `${by}; with \`balance_arm\` given, the weight that mends it is worked out too.`,
          measures: ['unbalance'],
        },
      ]
    // A mass m at the arm adds m·arm to the unbalance.
    const toLimit = (limit - unbalance) / arm
    const toZero = -unbalance / arm
    const say = (mass: number) => `${grams(Math.abs(mass))} ${mass > 0 ? 'more' : 'less'}`
    return [
      {
        text: `${by}: at the arm of the balance weight (${rounded(1000 * arm, 3)} mm) it takes ${say(toLimit)} to stand on the limit, and ${say(toZero)} to balance it. Weigh the surface again after, and whatever else that mass was counted in.`,
        measures: ['unbalance'],
      },
    ]
  })
