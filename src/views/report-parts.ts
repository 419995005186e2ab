/** What every report ends with: signatures to be written, who computed it, and what it is not. */
import type { Person } from '../format/types.ts'
import { section, text } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Rich, Table } from './view.ts'

export type Signature = { readonly role: string; readonly name: string; readonly licence: string }

const HEAD = ['as', 'name', 'licence', 'signature', 'date']

const row = ({ role, name, licence }: Signature): Table['rows'][number] => ({
  cells: [[role], ...[name, licence, '', ''].map((each): Rich => (each === '' ? [] : [each]))],
})

export const signs = (role: string, id: string | undefined, site: Site): Signature => {
  const person: Person | undefined = id === undefined ? undefined : site.campaign.records.people[id]
  return { role, name: person?.name ?? id ?? '', licence: person?.licence ?? '' }
}

/** Names that the record knows are filled in; the rest is for a pen. */
export const signatureBlocks = (signatures: readonly Signature[]): Block[] =>
  section('signatures', 'Signatures', [
    {
      is: 'writing',
      tables: [
        {
          caption: 'Signed on this paper copy',
          columns: HEAD.map((name) => ({ text: name })),
          rows: signatures.map(row),
          narrow: 'scroll',
        },
      ],
    },
  ])

/** `address`: of the page with the same content on the site. */
export const standingBlocks = (address: string, site: Site): Block[] =>
  section('standing', 'What this report is, and is not', [
    text(
      `Computed by version ${site.campaign.tool} from the records of ${site.title}; the same content stands at `,
      { is: 'link', text: address, to: address },
      ' of the site. Unless it says otherwise, ± is an expanded uncertainty for 95 %.',
    ),
    text(
      'It says what was measured, how well, and how that compares with criteria which the team chose. It is no approval and no release. The airworthiness code and the authority of the place, approved data, and the judgement of licensed persons prevail. A printed copy stays as it was printed; the record goes on.',
    ),
  ])
