/** The elements of the pages to record a run with. */
import { startForm, startList } from '../form/page/start.ts'

class RecordForm extends HTMLElement {
  connectedCallback(): void {
    void startForm(this)
  }
}

class RecordList extends HTMLElement {
  connectedCallback(): void {
    void startList(this)
  }
}

customElements.define('record-form', RecordForm)
customElements.define('record-list', RecordList)
