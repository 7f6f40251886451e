/**
 * The plates as pages and documents see them: the words and the results of each joined by slug,
 * in the order of a catalogue. A plate without a result (it failed, or is being written) is none.
 */
import { compareEdtf, parseEdtf } from '../records/edtf.ts';
import type { PlateOverlay } from '../records/overlay.ts';
import type { PlateRecord } from '../records/plate.ts';
import type { PlateResult } from '../records/result.ts';
import type { SittingRecord } from '../records/sitting.ts';
import { veiledParts, withoutVeiled } from '../records/veiled-parts.ts';

export interface PlateText {
  /** BCP 47. */
  readonly language: string;
  readonly record: PlateOverlay;
  /** Whether it has a text of its own, beyond its fields. */
  readonly hasBody: boolean;
}

export interface PublishedPlate {
  readonly slug: string;
  readonly record: PlateRecord;
  readonly result: PlateResult;
  /** The sittings as they were written, by id. */
  readonly sittings: ReadonlyMap<string, SittingRecord>;
  /** What the museum says of it in further languages. */
  readonly texts: readonly PlateText[];
  /** Names of the texts that are in the page's language and not in the original's. */
  readonly translated: ReadonlySet<string>;
  /** Language of the text itself where it is not the original's. */
  readonly translation?: string;
}

export type PlateSource = Omit<PublishedPlate, 'translated' | 'translation'>;

/** All plates of the sources, in catalogue order. */
export function inCatalogueOrder(sources: readonly PlateSource[]): readonly PublishedPlate[] {
  const translated: ReadonlySet<string> = new Set();
  return sources
    .map((source) => ({ ...openParts(source), result: withoutWithheld(source), translated }))
    .map((plate) => ({ plate, date: parseEdtf(plate.record.date ?? '') }))
    .sort(byDate)
    .map(({ plate }) => plate);
}

/** Its texts without what they say of captures that are kept but not published. */
function openParts(source: PlateSource): PlateSource {
  const veiled = veiledParts(source.record);
  return {
    ...source,
    record: withoutVeiled(source.record, veiled),
    // Steps are told by their places, so the same ones must be gone from both.
    texts: source.texts.map((text) => ({ ...text, record: withoutVeiled(text.record, veiled) })),
  };
}

/** The result without the views of captures that are kept but not published. */
function withoutWithheld({ result, record: { withheld } }: PlateSource): PlateResult {
  const views = result.views.filter(
    ({ captures }) => !captures.some((capture) => withheld.includes(capture)),
  );
  const { pair } = result;
  const whole =
    pair && [pair.positive, pair.negative].every((id) => views.some((v) => v.id === id));
  return { ...result, views, pair: whole ? pair : null };
}

const natural = new Intl.Collator('en', { numeric: true });

interface Dated {
  readonly plate: PublishedPlate;
  readonly date: ReturnType<typeof parseEdtf>;
}

/** By date, undated last; within a date by object number. */
function byDate(a: Dated, b: Dated): number {
  const [first, second] = [a.date, b.date];
  if (first && second && first.first !== second.first) return compareEdtf(first, second);
  if (!first !== !second) return first ? -1 : 1;
  const numbers = [a, b].map(({ plate: { record, slug } }) => record.objectNumber ?? slug);
  return natural.compare(numbers[0], numbers[1]);
}

/** A plate's cell in an index as HTML, rendered where it is not known. */
export type CellOf = (
  language: string,
  slug: string,
  render: () => Promise<string>,
) => Promise<string>;

/** What a build hands to the pages that it makes; both run in one process. */
export interface PagePlates {
  readonly plates: () => Promise<readonly PublishedPlate[]>;
  /** Whether this build makes the pages of a plate, or leaves those that stand. */
  readonly isMade: (slug: string) => boolean;
  readonly cellOf: CellOf;
}

const handle = Symbol.for('mirrorleaf.plates');
type Holder = typeof globalThis & { [handle]?: PagePlates };

export function handOver(plates: PagePlates): void {
  (globalThis as Holder)[handle] = plates;
}

/** @throws Error where no build is running. */
export function handedOver(): PagePlates {
  const plates = (globalThis as Holder)[handle];
  if (!plates) throw new Error('Pages are made by `npm run build` and shown by `npm run dev`.');
  return plates;
}
