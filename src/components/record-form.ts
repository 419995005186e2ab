/** The elements of the pages to record a run with. */
import { startForm, startList } from '../form/page/start.ts'

/** Whatever it was: nobody types into a form that is not there. */
const failed =
  (element: HTMLElement) =>
  (error: unknown): void => {
    const why = error instanceof Error ? error.message : String(error)
    const said = document.createElement('p')
    said.setAttribute('role', 'alert')
    said.textContent = `The form could not be started (${why}). Load the page again; what was kept in this browser is still there.`
    element.prepend(said)
  }

class RecordForm extends HTMLElement {
  connectedCallback(): void {
    startForm(this).catch(failed(this))
  }
}

class RecordList extends HTMLElement {
  connectedCallback(): void {
    startList(this).catch(failed(this))
  }
}

customElements.define('record-form', RecordForm)
customElements.define('record-list', RecordList)
