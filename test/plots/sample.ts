/** Plots to draw in tests: one of each kind, with every kind of layer. */
import type { Plot } from '../../src/views/view.ts'

const table = { caption: 'values', columns: [], rows: [], narrow: 'scroll' as const }

export const figure: Plot = {
  kind: 'figure',
  id: 'figure-1',
  title: 'Pressure <over> time & "quotes"',
  caption: ['invented numbers'],
  alt: 'pressure against time',
  x: 'time, min',
  y: 'pressure, Pa',
  series: [
    {
      name: 'as read',
      mark: 'points',
      muted: true,
      points: [
        [0, -2600, null],
        [10, -2590, null],
        [20, -2575, null],
      ],
    },
    {
      name: 'fit',
      mark: 'line',
      muted: false,
      points: [
        [0, -2601, null],
        [20, -2576, null],
      ],
    },
    {
      name: 'means',
      mark: 'both',
      muted: false,
      points: [
        [5, -2596, 4],
        [15, -2583, 4],
      ],
    },
  ],
  limits: [
    { axis: 'y', at: -2500, label: 'limit' },
    { axis: 'x', at: 18, label: 'end of hold' },
  ],
  bands: [
    { axis: 'x', from: 0, to: 4, label: 'settling' },
    { axis: 'y', from: -2610, to: -2605, label: 'play' },
  ],
  places: [],
  marks: [],
  table,
}

export const trend: Plot = {
  kind: 'trend',
  id: 'trend-1',
  title: 'Stiffness by round',
  caption: [],
  alt: 'stiffness by round',
  x: '',
  y: 'stiffness, N·m/rad',
  series: [
    {
      name: 'stiffness',
      mark: 'points',
      muted: false,
      points: [
        [1, 612, 35],
        [2, 741, 38],
        [3, 1085, 48],
      ],
      styles: ['fail', 'undetermined', 'pass'],
    },
  ],
  limits: [{ axis: 'y', at: 900, label: 'limit 900', refused: 'below' }],
  bands: [],
  places: [
    { at: 1, label: 'round 1' },
    { at: 2, label: 'round 2' },
    { at: 3, label: 'round 3' },
  ],
  marks: [{ at: 1.5, label: 'rework 3 March' }],
  table,
}
