/** Columns of a form, and a run of a leak check, as far as a test needs them. */
import { emptyRun, type RunState } from '../../src/form/state.ts'
import type { FormColumn } from '../../src/form/view.ts'

export const column = (
  name: string,
  form: FormColumn['form'],
  more: Partial<FormColumn> = {},
): FormColumn => ({
  name,
  label: name,
  meaning: '',
  form,
  units: [],
  choices: [],
  rows: [],
  inside: false,
  instrument: 'none',
  planned: true,
  stop: null,
  ...more,
})

/** A gauge that reads pascals. */
export const pressureColumn = (more: Partial<FormColumn> = {}): FormColumn =>
  column('pressure', 'number', { units: ['Pa'], instrument: 'required', ...more })

/** Time in minutes, pressure in pascals, a remark; nothing read yet. */
export const LEAK: RunState = {
  ...emptyRun('tank-leak'),
  when: '2026-03-04T09:12+01:00',
  columns: [
    { name: 'time', unit: 'min' },
    { name: 'pressure', unit: 'Pa' },
    { name: 'remark', unit: 'text' },
  ],
}
