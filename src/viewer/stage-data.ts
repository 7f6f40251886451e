/**
 * What the viewer has to know about one plate: the part of the result and of the record
 * that travels with the page. Made on the server by `PlateStage.astro`, read in the browser.
 */
import type { PlateRecord } from '../records/plate.ts';
import type { Registration, PlateResult, ViewResult } from '../records/result.ts';
import { sizeAtLeast, wholePicture, type PictureSize } from './addresses.ts';
import { nameViews } from './view-words.ts';
import type { StageWords } from '../words/en/stage.ts';
import type { TiltReading } from '../imaging/tilt.ts';

/** A text of the museum in another language than the page's. */
interface Foreign {
  /** BCP 47; none where it is the page's. */
  readonly lang?: string | undefined;
}

/** One view as the viewer needs it. */
export interface StageView {
  readonly id: string;
  /** What a reader calls it: "Positive, side lamp". */
  readonly name: string;
  readonly reading: ViewResult['reading'];
  readonly width: number;
  readonly height: number;
  /** Lies in the plate's frame, so that it can be laid on the others. */
  readonly registered: boolean;
  /** Why it does not, in words; null when it does. */
  readonly why: string | null;
  /** First twelve hexadecimal digits of the digest of the picture. */
  readonly digest: string;
  /** Address of the folder that holds info.json. */
  readonly service: string;
  /** A whole picture for the page and for reading tones. */
  readonly still: PictureSize;
  /** Its text alternative. */
  readonly alt: string;
  /** Data planes over it: `lamp`, `slope`, `gain`. */
  readonly layers: readonly string[];
  /** Captures that it was made from; the first one names its frames, `<capture>-<number>`. */
  readonly captures: readonly string[];
  readonly sitting: string;
}

export interface StageSpot extends Foreign {
  readonly id: string;
  readonly title: string;
  readonly note: string | null;
  readonly noteLang?: string | undefined;
  readonly view: string | null;
  readonly region: { x: number; y: number; width: number; height: number };
}

/** A guided look: paragraphs, and the part of an address that each speaks of. */
export interface StageLook extends Foreign {
  readonly id: string;
  readonly title: string;
  readonly steps: readonly ({ readonly text: string; readonly state: string } & Foreign)[];
}

export interface StageData {
  readonly slug: string;
  /** Folder of the plates' pages in the page's language, with a slash at the end. */
  readonly pages: string;
  readonly title: string;
  readonly objectNumber: string | null;
  readonly credit: string | null;
  readonly rights: string;
  /** Whether the plate shows its subject mirrored, so that a correction makes sense. */
  readonly reversed: boolean;
  readonly frame: PlateResult['frame'];
  readonly views: readonly StageView[];
  readonly pair: { readonly positive: string; readonly negative: string } | null;
  readonly turningPoint: number | null;
  /** Stills between the two readings, for browsers that cannot mix them; null without a pair. */
  readonly stills: {
    /** Address of their folder; `0.webp` and so on. */
    readonly folder: string;
    readonly width: number;
    readonly height: number;
    readonly steps: readonly { readonly tilt: number; readonly reading: TiltReading | null }[];
  } | null;
  readonly spots: readonly StageSpot[];
  readonly looks: readonly StageLook[];
}

/** The state of alignment of the capture that a view was made from, if exactly one was. */
function alignmentOf(result: PlateResult, view: ViewResult): Registration | null {
  const sitting = result.sittings.find((s) => s.id === view.sitting);
  return sitting?.captures.find((c) => c.id === view.captures[0])?.registration ?? null;
}

function whyApart(
  result: PlateResult,
  view: ViewResult,
  { words, recorded = asItIs }: Pick<StagePlace, 'words' | 'recorded'>,
): string | null {
  if (view.registered) return null;
  const alignment = alignmentOf(result, view);
  return alignment !== null && 'reason' in alignment
    ? recorded(alignment.reason).replace(/\.$/, '')
    : words.apart;
}

const asItIs = (text: string): string => text;

function alternative(
  record: PlateRecord,
  view: ViewResult,
  name: string,
  words: StageWords,
): string {
  if (view.reading === 'positive') return record.description.positive;
  if (view.reading === 'negative') return record.description.negative;
  return words.alternative(record.title, name);
}

function stillsOf(result: PlateResult, views: string): StageData['stills'] {
  const stills = result.pair?.stills;
  if (!stills) return null;
  const { width, height, steps } = stills;
  return { folder: views.replace(/views\/$/, 'tilt'), width, height, steps };
}

/** Where the pictures and the pages are, and what views are called in the page's language. */
export interface StagePlace {
  /** Base path of the exhibit. */
  readonly base: string;
  /** Folder of the plates' pages in the page's language, with a slash at the end. */
  readonly pages: string;
  /** BCP 47. */
  readonly language: string;
  readonly words: StageWords;
  /** Language of a text of the record, by its name, where it is not the page's. */
  readonly mark?: (text: string) => string | undefined;
  /** A sentence of the result in the page's language, as far as it is known. */
  readonly recorded?: (text: string) => string;
}

const unmarked = (): undefined => undefined;

/** Gather what the viewer needs; views that the record withholds are left out. */
export function stageData(
  result: PlateResult,
  record: PlateRecord,
  { base, pages, language, words, recorded, mark = unmarked }: StagePlace,
): StageData {
  const views = result.views.filter(
    (v) => !v.captures.some((capture) => record.withheld.includes(capture)),
  );
  const names = nameViews(views, result.sittings, language, words);
  const root = `${base.replace(/\/*$/, '/')}plates/${result.slug}/views/`;
  const here = (id: string | undefined) => views.some((v) => v.id === id);
  const pair =
    result.pair !== null && here(result.pair.positive) && here(result.pair.negative)
      ? { positive: result.pair.positive, negative: result.pair.negative }
      : null;
  return {
    slug: result.slug,
    pages,
    title: record.title,
    objectNumber: record.objectNumber ?? null,
    credit: record.credit ?? null,
    rights: record.rights,
    reversed: record.orientation === 'laterally-reversed',
    frame: result.frame,
    pair,
    turningPoint: result.pair?.turn?.value ?? null,
    stills: pair && stillsOf(result, root),
    spots: record.spots.map((s) => ({
      id: s.id,
      title: s.title,
      lang: mark(`spots.${s.id}.title`),
      note: s.note ?? null,
      noteLang: mark(`spots.${s.id}.note`),
      view: s.view ?? null,
      region: s.region,
    })),
    looks: lookStates(record, views, mark),
    views: views.map((view) => ({
      id: view.id,
      name: names.get(view.id) ?? view.id,
      reading: view.reading,
      width: view.width,
      height: view.height,
      registered: view.registered,
      why: whyApart(result, view, { words, ...(recorded && { recorded }) }),
      digest: view.tiles.slice(0, 12),
      service: `${root}${view.id}`,
      still: sizeAtLeast(view.sizes, 900),
      alt: alternative(record, view, names.get(view.id) ?? view.id, words),
      layers: view.layers.map((layer) => layer.name),
      captures: view.captures,
      sitting: view.sitting,
    })),
  };
}

/** The steps of the guided looks as addresses; views that are not shown are passed over. */
export function lookStates(
  record: Pick<PlateRecord, 'looks' | 'spots'>,
  views: readonly { readonly id: string }[],
  mark: NonNullable<StagePlace['mark']> = unmarked,
): StageLook[] {
  return record.looks.map(({ id, title, steps }) => ({
    id,
    title,
    lang: mark(`looks.${id}.title`),
    steps: steps.map((step, n) => {
      const region = step.region ?? record.spots.find((spot) => spot.id === step.spot)?.region;
      const of = step.of.filter((name) => views.some((view) => view.id === name));
      const parts = [`view=${step.view}`];
      if (of.length > 0) parts.push(`of=${of.join(',')}`);
      if (region) parts.push(`xywh=pixel:${region.x},${region.y},${region.width},${region.height}`);
      const lang = mark(`looks.${id}.steps.${n}.text`);
      return { text: step.text, lang, state: `#${parts.join('&')}` };
    }),
  }));
}

/** Address of a view's largest whole picture. */
export function largestPicture(view: StageView): string {
  return wholePicture(view.service, null);
}
