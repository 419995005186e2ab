/** Who reviews: the person that git knows, or the one who is named. */
import type { Person } from '../../src/format/types.ts'
import { nearest } from '../../src/quantity/nearest.ts'

export type Reviewer = {
  readonly person: Person
  /** As the trailer names the person. */
  readonly email: string
  /** Said beside, without harm. */
  readonly remark: string | null
}

export type GitIdentity = { readonly name: string; readonly email: string }

/** `Name <email> seconds zone`, as `git var GIT_AUTHOR_IDENT` prints it. */
export const parseIdentity = (line: string | null): GitIdentity | null => {
  const [, name = '', email = ''] = /^(.*?)\s*<([^<>]+)>/.exec(line ?? '') ?? []
  return email === '' ? null : { name, email }
}

type People = Readonly<Record<string, Person>>

const owner = (people: People, email: string): Person | undefined =>
  Object.values(people).find((person) =>
    person.emails.some((each) => each.toLowerCase() === email.toLowerCase()),
  )

const named = (people: People, git: GitIdentity | null, by: string): Reviewer | string => {
  const person = people[by]
  if (!person) {
    const close = nearest(by, Object.keys(people))
    return `There is no ${by} in shared/people.yaml${close.length > 0 ? `; these are close: ${close.join(', ')}` : ''}.`
  }
  const self = git === null ? undefined : owner(people, git.email)
  if (self && self.id !== by) {
    return (
      `Git knows you as ${self.name} (${git?.email}), and nobody reviews for somebody else.\n` +
      `${person.name} can do it with an own identity: git -c user.email=… or git config user.email`
    )
  }
  const email = (self && git?.email) || person.emails[0]
  if (email === undefined) return `${person.name} has no e-mail in shared/people.yaml; a review needs one.`
  const remark = self
    ? null
    : `Git does not know you as ${person.name}: the review rests on the word in the commit alone.`
  return { person, email, remark }
}

/** The reviewer, or why there is none and what to do. */
export const reviewerOf = (
  people: People,
  git: GitIdentity | null,
  by: string | undefined,
): Reviewer | string => {
  const found = by === undefined ? ofGit(people, git) : named(people, git, by)
  if (typeof found === 'string' || found.person.roles.includes('review')) return found
  const able = Object.values(people).filter((person) => person.roles.includes('review'))
  return (
    `${found.person.name} has not the role review in shared/people.yaml. ` +
    (able.length > 0
      ? `These have: ${able.map((person) => person.id).join(', ')}.`
      : 'Nobody has it; give it to somebody there.')
  )
}

const ofGit = (people: People, git: GitIdentity | null): Reviewer | string => {
  if (!git)
    return 'Git does not know who you are: git config user.email, with an e-mail of shared/people.yaml.'
  const person = owner(people, git.email)
  if (person) return { person, email: git.email, remark: null }
  return (
    `Git knows you as ${git.email}, which is nobody's in shared/people.yaml.\n` +
    'Add it to your emails there, set git config user.email, or say who you are with --by.'
  )
}
