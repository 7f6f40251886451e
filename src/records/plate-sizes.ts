/**
 * Trade names of plate sizes. A name proposes millimetres and says whose figures they are; it
 * never stands in for a measurement. Sources disagree by up to 22 mm in one side, so a measured
 * size always wins, and a name that does not fit it is worth a second look.
 *
 * References
 * - Library of Congress, Prints & Photographs Division. Popular Photographic Print Processes:
 *   Daguerreotypes. The other sources stand beside their figures in plate-sizes.json.
 */
import sizes from './plate-sizes.json' with { type: 'json' };

interface SizeEdition {
  readonly edition: string;
  readonly inches?: readonly number[];
  readonly millimetres?: readonly number[];
  readonly source: string;
  readonly standing: string;
  readonly conflict?: string;
}

export interface SizeProposal {
  /** The name as the table has it: `sixth`. */
  readonly name: string;
  /** Millimetres, shorter side first: a name does not say how the plate is turned. */
  readonly shorter: number;
  readonly longer: number;
  /** Whose inches: `US`, `French`. */
  readonly edition: string;
  readonly source: string;
  /** `seen` in the source named, or `from memory`. */
  readonly standing: string;
}

const millimetresPerInch = 25.4;
/** Agreement of a name with a measurement, per side; common practice, no source. */
const toleranceMillimetres = 5;
const toleranceShare = 0.08;

export const plateSizeNames: readonly string[] = sizes.plates.map((plate) => plate.name);

/** `Sixth plate`, `1/6 plate` and `sixth` are one name. */
function plain(name: string): string {
  const fractions: Readonly<Record<string, string>> = {
    '1/2': 'half',
    '1/4': 'quarter',
    '1/6': 'sixth',
    '1/8': 'eighth',
    '1/9': 'ninth',
    '1/16': 'sixteenth',
  };
  const bare = name
    .toLowerCase()
    .replace(/[-\s]+/g, ' ')
    .replace(/ ?plates?$/, '')
    .trim();
  return fractions[bare] ?? bare;
}

function proposal(name: string, entry: SizeEdition): SizeProposal {
  const [shorter, longer] = entry.inches
    ? entry.inches.map((side) => Math.round(side * millimetresPerInch * 10) / 10)
    : entry.millimetres!;
  const { edition, source, standing } = entry;
  return { name, shorter, longer, edition, source, standing };
}

/** All sizes that sources give a name, the best attested first; empty for a name nobody uses. */
export function sizeProposals(name: string): SizeProposal[] {
  const asked = plain(name);
  const known = sizes.plates.find(
    (plate) => plate.name === asked || (plate.aliases ?? []).includes(asked),
  );
  return known ? known.editions.map((entry) => proposal(known.name, entry)) : [];
}

/** The size that a name proposes, or null. */
export function proposeSize(name: string): SizeProposal | null {
  return sizeProposals(name)[0] ?? null;
}

/** The proposal in words, with its edition and source. */
export function proposalWords(size: SizeProposal): string {
  const { name, shorter, longer, edition, source, standing } = size;
  const memory = standing === 'from memory' ? ', from memory' : '';
  return `${name} plate, ${shorter} × ${longer} mm (${edition} size, ${source}${memory})`;
}

function fits(measured: number, stated: number): boolean {
  const tolerance = Math.max(toleranceMillimetres, stated * toleranceShare);
  return Math.abs(measured - stated) <= tolerance;
}

export type SizeAgreement =
  /** At least one source gives the name a size like the measured one. */
  | { readonly agrees: true; readonly with: SizeProposal }
  /** None does; the nearest is named. */
  | { readonly agrees: false; readonly nearest: SizeProposal };

/**
 * Whether a measured size can be what its name says, within 5 mm or 8 % per side of any source.
 *
 * @param measured Both sides in millimetres, in any order.
 * @returns null for a name that no source has.
 */
export function sizeAgreement(
  name: string,
  measured: readonly [number, number],
): SizeAgreement | null {
  const proposals = sizeProposals(name);
  if (proposals.length === 0) return null;
  const [shorter, longer] = [...measured].sort((a, b) => a - b);
  const good = proposals.find((p) => fits(shorter, p.shorter) && fits(longer, p.longer));
  if (good) return { agrees: true, with: good };
  const distance = (p: SizeProposal) => Math.hypot(p.shorter - shorter, p.longer - longer);
  return { agrees: false, nearest: proposals.toSorted((a, b) => distance(a) - distance(b))[0] };
}

/**
 * The trade name of a recorded size: its own where it is one, else the best attested that fits
 * the millimetres, nearest first. Null where none fits or nothing is recorded.
 */
export function sizeName(size: string | readonly [number, number] | undefined): string | null {
  if (size === undefined) return null;
  if (typeof size === 'string') return proposeSize(size)?.name ?? size;
  const [shorter, longer] = [...size].sort((a, b) => a - b);
  const distance = (p: SizeProposal) => Math.hypot(p.shorter - shorter, p.longer - longer);
  const fitting = plateSizeNames
    .flatMap(sizeProposals)
    .filter((p) => fits(shorter, p.shorter) && fits(longer, p.longer));
  return fitting.toSorted((a, b) => distance(a) - distance(b))[0]?.name ?? null;
}

/** Both sides in millimetres, as recorded or as a trade name proposes them; null where unknown. */
export function sizeOf(
  size: string | readonly [number, number] | undefined,
): readonly [number, number] | null {
  if (size === undefined) return null;
  if (typeof size !== 'string') return size;
  const proposed = proposeSize(size);
  return proposed ? [proposed.longer, proposed.shorter] : null;
}
