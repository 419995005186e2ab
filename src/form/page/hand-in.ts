/** Handing in: download, copy, share, or the forge's page for a new file. */
import { newFilePage } from '../handing.ts'
import { runFolder, runId } from '../name.ts'
import { runText } from '../write.ts'
import { DATA } from './data-file.ts'
import { button, h, part } from './dom.ts'
import { todoList } from './faults.ts'
import type { Live } from './live.ts'
import type { Store } from './store.ts'

type Piece = { readonly name: string; readonly blob: Blob }

const save = (blob: Blob, name: string): void => {
  const address = URL.createObjectURL(blob)
  const link = h('a', { href: address, download: name })
  document.body.append(link)
  link.click()
  link.remove()
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

/** The text, and the data and photos that go beside it. */
const piecesOf = async (live: Live, store: Store): Promise<Piece[]> => {
  const state = live.state()
  const id = runId(state, live.view.taken)
  const { key } = live.run()
  const data = state.data ? await store.file(key, DATA) : undefined
  const photos = await Promise.all(
    state.files.map(async ({ file }) => ({ name: file, blob: await store.file(key, file) })),
  )
  return [
    { name: `${id}.md`, blob: new Blob([runText(state)], { type: 'text/markdown' }) },
    ...(data && typeof state.data?.file === 'string' ? [{ name: state.data.file, blob: data }] : []),
    ...photos.flatMap(({ name, blob }) => (blob ? [{ name, blob }] : [])),
  ]
}

const archiveOf = async (pieces: readonly Piece[], folder: string): Promise<Blob> => {
  const { zipSync } = await import('fflate')
  const entries = await Promise.all(
    pieces.map(
      async ({ name, blob }) => [`${folder}/${name}`, new Uint8Array(await blob.arrayBuffer())] as const,
    ),
  )
  const bytes = zipSync(Object.fromEntries(entries), { level: 6 })
  return new Blob([new Uint8Array(bytes)], { type: 'application/zip' })
}

export const handInPart = (
  live: Live,
  store: Store,
  root: HTMLElement,
  handed: () => void,
  showAll: () => void,
): HTMLElement => {
  const id = (): string => runId(live.state(), live.view.taken)
  const file = async (): Promise<Piece> => {
    const pieces = await piecesOf(live, store)
    const [text] = pieces
    if (pieces.length === 1 && text) return text
    return { name: `${id()}.zip`, blob: await archiveOf(pieces, runFolder(live.state())) }
  }
  const done = (words: string): void => {
    handed()
    live.say(words)
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
    const { name, blob } = await file()
    save(blob, name)
    done(`Downloaded as ${name}.`)
  })
  const copy = tried(async () => {
    await navigator.clipboard.writeText(runText(live.state()))
    done('The text of the run is on the clipboard.')
  })
  const share = tried(async () => {
    const { name, blob } = await file()
    const shared = { title: id(), files: [new File([blob], name, { type: blob.type })] }
    if (!navigator.canShare?.(shared)) throw new Error('this browser does not share files')
    await navigator.share(shared)
    done('Shared.')
  })
  const forge = h('p')
  const renderForge = (): void => {
    if (live.view.forge === '') return
    const state = live.state()
    const page = newFilePage(live.view, state, id(), runText(state))
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
  const preview = h('details', {}, h('summary', {}, 'The file as it will be'), name, text)
  const render = (): void => {
    name.textContent = `${runFolder(live.state())}/${id()}.md`
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
    preview,
  )
}
