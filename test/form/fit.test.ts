/** Which instruments are offered first, and what is said of the others. */
import { describe, expect, it } from 'vitest'
import { offered } from '../../src/form/fit.ts'
import type { FormInstrument } from '../../src/form/view.ts'

const DAY = '2026-03-04'
const instrument = (id: string, due: string, columns: FormInstrument['columns']): FormInstrument => ({
  id,
  title: `Title of ${id}`,
  unit: 'Pa',
  periods: [{ on: '2026-01-10', due }],
  columns,
})
const all = [
  instrument('pg-old', '2026-03-03', { pressure: [] }),
  instrument('pg-coarse', '2026-12-31', { pressure: ['resolution 50 Pa, asked <= 1 Pa'] }),
  instrument('pg-good', '2026-12-31', { pressure: [] }),
  instrument('scale', '2026-12-31', {}),
  instrument('scale-old', '2026-03-03', {}),
]
const said = (column: string | null): string[] =>
  offered(all, column, DAY).map(({ fits, value, text }) => `${fits ? 'fits' : 'not'} ${value}: ${text}`)

describe('for a column', () => {
  it('those that can read it, the fit ones first, the others with each reason', () => {
    expect(said('pressure')).toEqual([
      'fits pg-good: pg-good: Title of pg-good',
      'not pg-old: pg-old: Title of pg-old (calibration lapsed on 2026-03-03)',
      'not pg-coarse: pg-coarse: Title of pg-coarse (resolution 50 Pa, asked <= 1 Pa)',
    ])
  })
})

describe('for a value that is measured on the day', () => {
  // A volume may be found by weighing what goes in: any instrument may serve, so none is left out.
  it('all, those in calibration first, the others with their reason', () => {
    expect(said(null)).toEqual([
      'fits pg-coarse: pg-coarse: Title of pg-coarse',
      'fits pg-good: pg-good: Title of pg-good',
      'fits scale: scale: Title of scale',
      'not pg-old: pg-old: Title of pg-old (calibration lapsed on 2026-03-03)',
      'not scale-old: scale-old: Title of scale-old (calibration lapsed on 2026-03-03)',
    ])
  })
})
