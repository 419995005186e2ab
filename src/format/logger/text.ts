/** Is this the text of a log at all? */
import type { LoggerFault, LoggerText } from './types.ts'

/** An archive begins so, and workbooks are archives (APPNOTE 4.3.7). */
const ARCHIVE = 'PK\u0003\u0004'

/** What is wrong with the file as a whole; null where nothing is. */
export function notText({ text, cut }: LoggerText): LoggerFault | null {
  const fault = (message: string, start: number, hint: string, code = 'readings/not-text'): LoggerFault => ({
    code,
    message,
    at: { in: 'data', start, end: start + 1 },
    hint,
  })
  const exported = 'export the readings as text: CSV'
  if (text.startsWith(ARCHIVE)) return fault('this is a workbook or an archive, not text', 0, exported)
  if (text.trim() === '')
    return fault('the data file is empty', 0, 'copy it from the logger once more', 'readings/no-table')
  if (isBinary(text.slice(0, 1024)))
    return fault('this is no text: it holds zero bytes', text.indexOf('\0'), exported)
  if (cut) {
    const message = 'the file ends in the middle of a sign: it was cut off'
    return fault(message, text.length - 1, 'copy it from the logger once more')
  }
  return null
}

/** Zero bytes here and there come of a log that was cut off, and are found at their cells. */
const isBinary = (head: string): boolean =>
  head.slice(0, 8).includes('\0') || head.split('\0').length - 1 > head.length / 10
