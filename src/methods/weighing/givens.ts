/** What a weighing needs to know beside the scales. */
import type { Given } from '../method.ts'

const place = {
  kind: 'angle',
  role: 'setpoint',
  required: false,
  range: { low: -Math.PI / 2, high: Math.PI / 2 },
} as const
const height = {
  kind: 'length',
  role: 'setpoint',
  required: false,
  range: { low: -500, high: 9000 },
} as const
const tilt = { kind: 'angle', role: 'known', range: { low: -0.35, high: 0.35 } } as const

export const givens: readonly Given[] = [
  {
    name: 'datum',
    kind: 'text',
    role: 'words',
    required: true,
    meaning: 'what arms are counted from; they are positive aft of it',
  },
  {
    ...tilt,
    name: 'pitch',
    symbol: '\\theta',
    required: true,
    meaning: 'how far the levelling means were off level on the scales, nose up positive',
  },
  {
    name: 'cg_height',
    kind: 'length',
    symbol: 'h',
    role: 'known',
    required: true,
    range: { low: -10, high: 10 },
    meaning:
      'height of the centre of gravity above the line of the contacts; an estimate with its uncertainty will do when it stands level',
  },
  {
    ...tilt,
    name: 'roll',
    symbol: '\\phi',
    required: false,
    meaning: 'how far it was off level sideways, right wing down positive; needed for `cg_lateral`',
  },
  {
    name: 'mac_leading_edge',
    kind: 'length',
    symbol: 'x_L',
    role: 'known',
    required: false,
    meaning: 'arm of the leading edge of the mean aerodynamic chord',
  },
  {
    name: 'mac',
    kind: 'length',
    symbol: '\\bar c',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning: 'mean aerodynamic chord',
  },
  { ...place, name: 'latitude', symbol: '\\varphi', meaning: 'latitude of the place of weighing' },
  {
    ...place,
    name: 'scale_latitude',
    symbol: '\\varphi_s',
    meaning: 'latitude at which the scales were adjusted',
    source: 'Gravity differs by up to 0.5 % between equator and poles: WGS 84 normal gravity',
  },
  { ...height, name: 'elevation', meaning: 'elevation of the place of weighing; absent: sea level' },
  {
    ...height,
    name: 'scale_elevation',
    meaning: 'elevation at which the scales were adjusted; absent: sea level',
  },
  {
    name: 'checked_on_the_spot',
    kind: 'text',
    role: 'words',
    required: false,
    meaning: 'how the scales were checked in place with known weights, in place of the latitudes',
  },
]

export const armOf = (name: string): Given => ({
  name: `arm_${name}`,
  kind: 'length',
  symbol: 'x',
  role: 'known',
  required: false,
  meaning: `arm of ${name.replaceAll('_', ' ')} from the datum, positive aft`,
})

export const sideOf = (name: string): Given => ({
  name: `side_${name}`,
  kind: 'length',
  symbol: 'y',
  role: 'known',
  required: false,
  meaning: `distance of ${name.replaceAll('_', ' ')} from the plane of symmetry, right positive`,
})

const known = { role: 'known', required: false, range: { low: 0 } } as const

/** An item is weighed in a row of its own, or given as a mass, or as a volume with its density. */
export const itemGivens = (name: string): Given[] => {
  const said = name.replaceAll('_', ' ')
  return [
    armOf(name),
    sideOf(name),
    { ...known, name: `mass_${name}`, kind: 'mass', symbol: 'm', meaning: `mass of ${said}` },
    { ...known, name: `volume_${name}`, kind: 'volume', symbol: 'V', meaning: `volume of ${said}` },
    { ...known, name: `density_${name}`, kind: 'density', symbol: '\\rho', meaning: `density of ${said}` },
  ]
}
