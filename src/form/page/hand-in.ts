/** Handing in: download, copy, share, or the forge's page for a new file. */

import { errorsIn } from '../finding.ts'
import { newFilePage } from '../handing.ts'
import { photoKey, runFolder } from '../name.ts'
import { runText } from '../write.ts'
import { button, h, part } from './dom.ts'
import { todoList } from './faults.ts'
import type { Live } from './live.ts'
import { saveFile } from './save-file.ts'
import { DATA, type Store } from './store.ts'

type Piece = { readonly name: string; readonly blob: Blob }

type Parcel = { readonly pieces: readonly Piece[]; readonly absent: readonly string[] }

/** The text, and the data and photos that go beside it; those that this browser does not have. */
const parcelOf = async (live: Live, store: Store): Promise<Parcel> => {
  const state = live.state()
  const id = live.id()
  const { key } = live.run()
  const data = typeof state.data?.file === 'string' ? [{ name: state.data.file, kept: DATA }] : []
  const photos = state.files.map(({ file }) => ({ name: file, kept: photoKey(id, file) }))
  const beside = await Promise.all(
    [...data, ...photos].map(async ({ name, kept }) => ({ name, blob: await store.file(key, kept) })),
  )
  const text = { name: `${id}.md`, blob: new Blob([runText(state)], { type: 'text/markdown' }) }
  return {
    pieces: [text, ...beside.flatMap(({ name, blob }) => (blob ? [{ name, blob }] : []))],
    absent: beside.flatMap(({ name, blob }) => (blob ? [] : [name])),
  }
}

const packed = async (pieces: readonly Piece[], folder: string): Promise<Blob> => {
  // Packing is large, and few runs need it.
  const { archiveOf } = await import('../archive.ts')
  const read = pieces.map(async ({ name, blob }) => ({
    name,
    bytes: new Uint8Array(await blob.arrayBuffer()),
  }))
  const bytes = archiveOf(await Promise.all(read), folder)
  return new Blob([new Uint8Array(bytes)], { type: 'application/zip' })
}

export const handInPart = (
  live: Live,
  store: Store,
  root: HTMLElement,
  handed: () => void,
  showAll: () => void,
): HTMLElement => {
  /** What goes, and in words what does not. */
  const parcel = async (): Promise<Piece & { readonly lacks: readonly string[] }> => {
    const { pieces, absent } = await parcelOf(live, store)
    const lacks = absent.map(
      (name) => `${name} is not in this browser and did not go along: hand it in beside it.`,
    )
    const [text] = pieces
    if (pieces.length === 1 && text) return { ...text, lacks }
    return { name: `${live.id()}.zip`, blob: await packed(pieces, runFolder(live.state())), lacks }
  }
  /** Whoever hands it in is told at once what is missing yet. */
  const done = (words: string, lacks: readonly string[]): void => {
    const errors = errorsIn(live.preview()?.findings ?? [])
    const open =
      errors > 0 ? [`The checker does not take it yet: ${errors} still to do, listed under “Hand in”.`] : []
    const more = [...lacks, ...open]
    handed()
    live.say([words, ...more].join(' '), more.length > 0)
  }
  const tried = (work: () => Promise<void>) => (): void => {
    showAll()
    work().catch((error: unknown) => {
      // Whoever closes the sheet for sharing has not failed.
      if (error instanceof DOMException && error.name === 'AbortError') return
      live.say(
        `That did not work (${error instanceof Error ? error.message : String(error)}). The text stands below: copy it.`,
        true,
      )
      preview.open = true
    })
  }
  const download = tried(async () => {
    const { name, blob, lacks } = await parcel()
    saveFile(blob, name)
    done(`Downloaded as ${name}.`, lacks)
  })
  const copy = tried(async () => {
    await navigator.clipboard.writeText(runText(live.state()))
    const { data, files } = live.state()
    const beside = [...(typeof data?.file === 'string' ? [data.file] : []), ...files.map(({ file }) => file)]
    const lacks = beside.length > 0 ? [`It is the text only: ${beside.join(', ')} goes with “Download”.`] : []
    done('The text of the run is on the clipboard.', lacks)
  })
  const share = tried(async () => {
    const { name, blob, lacks } = await parcel()
    const shared = { title: live.id(), files: [new File([blob], name, { type: blob.type })] }
    if (!navigator.canShare?.(shared)) throw new Error('this browser does not share files')
    await navigator.share(shared)
    done('Shared.', lacks)
  })
  const forge = h('p')
  const renderForge = (): void => {
    if (live.view.forge === '') return
    const state = live.state()
    const page = newFilePage(live.view, state, live.id(), runText(state))
    forge.replaceChildren(
      page.ok
        ? h(
            'a',
            { href: page.address, target: '_blank', rel: 'noopener', click: handed },
            'Open it as a new file on the forge',
          )
        : `Not as a new file on the forge: ${page.why}.`,
    )
  }
  const text = h('pre', { tabindex: 0, 'aria-label': 'The file of this run' })
  const name = h('p', { class: 'label' })
  const renamed = h('p', { role: 'status' })
  const preview = h('details', {}, h('summary', {}, 'The file as it will be'), name, text)
  const render = (): void => {
    const { known } = live.run()
    const id = live.id()
    const other = live.run().handed !== null && known !== id
    name.textContent = `${runFolder(live.state())}/${id}.md`
    renamed.textContent = other ? `It was called ${known}: under this name it is another run.` : ''
    text.textContent = runText(live.state())
    renderForge()
  }
  live.onChange(render)
  render()
  const sharing = typeof navigator.share === 'function' ? button('Share', share) : null
  return part(
    'hand-in',
    'Hand in',
    todoList(live, root),
    h(
      'div',
      { class: 'tools' },
      button('Download', download, { class: 'large' }),
      button('Copy the text', copy),
      sharing,
    ),
    forge,
    renamed,
    preview,
  )
}
