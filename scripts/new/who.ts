/** Who writes: the person that is named, else the one that git knows. */
import { peopleBook } from '../../src/campaign/history/reviews.ts'
import type { Person } from '../../src/format/types.ts'
import { unknownName } from '../../src/views/part-names.ts'
import { parseIdentity } from '../approve/reviewer.ts'
import { gitLine } from '../git.ts'

export type Writer = {
  readonly by: string | null
  /** Said beside; null: nothing to say. */
  readonly note: string | null
}

/** Null and a note where nobody is known: the field is left open. A text: the name is not in `people.yaml`. */
export const writerOf = (
  people: Readonly<Record<string, Person>>,
  root: string,
  named: string | undefined,
): Writer | string => {
  if (named !== undefined) {
    if (Object.hasOwn(people, named)) return { by: named, note: null }
    return unknownName('person', named, Object.keys(people))
  }
  const identity = parseIdentity(gitLine(root, ['var', 'GIT_AUTHOR_IDENT']))
  if (!identity)
    return { by: null, note: 'Git does not know who you are (user.email): who did it is left open.' }
  const person = peopleBook(people).byEmail.get(identity.email.toLowerCase())
  if (person) return { by: person.id, note: null }
  const note = `Git knows you as ${identity.email}, which is nobody's in shared/people.yaml: who did it is left open.`
  return { by: null, note }
}
