/** Ways to hand a run in. */
import { runFolder } from './name.ts'
import type { RunState } from './state.ts'

/** Longer addresses are refused by forges and browsers (common practice, no source). */
export const LONGEST_ADDRESS = 8000

export type NewFilePage =
  | { readonly ok: true; readonly address: string }
  | { readonly ok: false; readonly why: string }

/** The page of the forge for a new file, with name and text filled in. */
export const newFilePage = (
  { forge, main }: { readonly forge: string; readonly main: string },
  state: RunState,
  id: string,
  text: string,
): NewFilePage => {
  if (forge === '') return { ok: false, why: 'the campaign names no forge' }
  if (state.files.length > 0 || state.data)
    return {
      ok: false,
      why: 'a page for a new file takes the text only, and photos or data go with this run',
    }
  const place = `${forge.replace(/\/+$/, '')}/new/${encodeURIComponent(main)}/${runFolder(state)}`
  const address = `${place}?filename=${encodeURIComponent(`${id}.md`)}&value=${encodeURIComponent(text)}`
  if (address.length <= LONGEST_ADDRESS) return { ok: true, address }
  const why = `the run is too long for an address (${address.length} characters, at most ${LONGEST_ADDRESS}): download it`
  return { ok: false, why }
}
