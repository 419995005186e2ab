/** Said once where a reader begins: that git could not be asked, and how to mend it. */
import type { Site } from './site.ts'
import type { Block } from './view.ts'

/** Nothing where the history is known, or where nobody asked for it. */
export const notKnownStrip = ({ campaign, linked }: Site): Block[] => {
  const problem = campaign.problems.find(({ code }) => code === 'history/unknown')
  if (!problem) return []
  const { message, hint } = problem
  const sentence = `${message[0]?.toUpperCase() ?? ''}${message.slice(1)}`
  return [
    {
      is: 'strip',
      title: 'History not known',
      tone: 'quiet',
      items: [
        linked(
          `${sentence}. So nobody can say here who recorded a run, what was reviewed, or what changed since.`,
        ),
        ...(hint ? [linked(hint)] : []),
      ],
    },
  ]
}
