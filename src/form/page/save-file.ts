/** A file that the page has made, into the folder of downloads. */
import { h } from './dom.ts'

/** A slow device may take its time to write it. */
const UNTIL_WRITTEN = 60_000

export const saveFile = (blob: Blob, name: string): void => {
  const address = URL.createObjectURL(blob)
  const link = h('a', { href: address, download: name })
  document.body.append(link)
  link.click()
  link.remove()
  setTimeout(() => URL.revokeObjectURL(address), UNTIL_WRITTEN)
}
