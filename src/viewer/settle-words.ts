/** What an address asks for that this plate does not have. */
export const settleWords = {
  noView: (id: string) => `This plate has no view “${id}” any more.`,
  noSpot: (id: string | null) => `This plate has no spot “${id}” any more.`,
  changed: 'The picture has changed since this address was made; the same place is shown.',
  tilt: 'Tilt needs a positive and a negative in register; this plate has no such pair.',
  lamp: 'Lamp needs a set of frames under many lamps; this plate has none.',
  range: 'Range needs a merged bracket of exposures; this plate has none.',
  difference: 'Difference needs two sittings in register; this plate has no such pair.',
  apart: (name: string, why: string | null) =>
    `“${name}” cannot be laid under a divider: ${why ?? 'not aligned'}.`,
} as const;
