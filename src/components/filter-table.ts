/** Filtering and sorting of a table in the page. The address carries the choice, so that it can be passed on. */

const rowsOf = (table: HTMLTableElement): HTMLTableRowElement[] => [...(table.tBodies[0]?.rows ?? [])]

const textOf = (row: HTMLTableRowElement, column: number): string =>
  row.cells[column]?.textContent?.trim() ?? ''

const compareTexts = new Intl.Collator('en', { numeric: true }).compare

const sortBy = (table: HTMLTableElement, column: number, descending: boolean): void => {
  const sorted = rowsOf(table).sort(
    (a, b) => compareTexts(textOf(a, column), textOf(b, column)) * (descending ? -1 : 1),
  )
  table.tBodies[0]?.append(...sorted)
  for (const [index, cell] of [...(table.tHead?.rows[0]?.cells ?? [])].entries()) {
    if (index === column) cell.setAttribute('aria-sort', descending ? 'descending' : 'ascending')
    else cell.removeAttribute('aria-sort')
  }
}

const makeSortable = (table: HTMLTableElement, chosen: (column: string) => void): void => {
  for (const cell of table.tHead?.rows[0]?.cells ?? []) {
    const name = cell.textContent?.trim() ?? ''
    if (name === '') continue
    const button = document.createElement('button')
    button.type = 'button'
    button.textContent = name
    button.addEventListener('click', () =>
      chosen(cell.getAttribute('aria-sort') === 'ascending' ? `-${name}` : name),
    )
    cell.replaceChildren(button)
  }
}

class FilterTable extends HTMLElement {
  connectedCallback(): void {
    const form = this.querySelector('form')
    const table = this.querySelector('table')
    const count = this.querySelector('.count')
    if (!form || !table || !count) return
    const choices = [...form.querySelectorAll('select')]
    const address = new URLSearchParams(location.search)
    let order = address.get('sort') ?? ''

    const apply = (): void => {
      const query = new URLSearchParams(
        choices.filter((choice) => choice.value).map((choice) => [choice.name, choice.value]),
      )
      if (order) query.set('sort', order)
      let shown = 0
      for (const row of rowsOf(table)) {
        const fits = choices.every(
          (choice) =>
            !choice.value ||
            (row.getAttribute(`data-${choice.name}`) ?? '').split('\n').includes(choice.value),
        )
        row.hidden = !fits
        if (fits) shown += 1
      }
      const names = [...(table.tHead?.rows[0]?.cells ?? [])].map((cell) => cell.textContent?.trim())
      const column = names.indexOf(order.replace(/^-/, ''))
      if (column >= 0) sortBy(table, column, order.startsWith('-'))
      count.textContent = `${shown} of ${rowsOf(table).length} shown`
      const search = query.toString()
      history.replaceState(null, '', location.pathname + (search ? `?${search}` : '') + location.hash)
    }

    for (const choice of choices) {
      choice.value = address.get(choice.name) ?? ''
      if (choice.selectedIndex < 0) choice.value = ''
      choice.addEventListener('change', apply)
    }
    makeSortable(table, (column) => {
      order = column
      apply()
    })
    form.addEventListener('submit', (event) => event.preventDefault())
    form.hidden = false
    apply()
  }
}

customElements.define('filter-table', FilterTable)
