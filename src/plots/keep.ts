/** A run and its report, a card and the trends show the same plots: what was drawn lately is not drawn again. */

/** The same function, with the answers to the last `most` different questions kept. Questions are plain data. */
export const keepLast = <Question, Answer>(
  answer: (question: Question) => Answer,
  most: number,
): ((question: Question) => Answer) => {
  const kept = new Map<string, Answer>()
  return (question) => {
    const key = JSON.stringify(question)
    const known = kept.get(key) ?? answer(question)
    // Put in anew, so that the one asked for longest ago stands first and is the first to go.
    kept.delete(key)
    kept.set(key, known)
    for (const oldest of kept.keys()) {
      if (kept.size <= most) break
      kept.delete(oldest)
    }
    return known
  }
}
