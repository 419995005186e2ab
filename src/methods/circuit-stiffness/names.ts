/** Which measures rest on what, for bars that concern some and not others. */
export const STIFFNESS = [
  'stiffness',
  'surface_stiffness',
  'linear_stiffness',
  'compliance',
  'stiffness_positive',
  'stiffness_negative',
  'friction',
] as const

export const segmentMeasures = (segments: readonly (readonly [string, string])[]): string[] =>
  segments.flatMap(([from, to]) => [`compliance_${from}_${to}`, `share_${from}_${to}`])
