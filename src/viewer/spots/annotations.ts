/**
 * Spots as W3C Web Annotations, out and in.
 *
 * References
 * - W3C Web Annotation Data Model (2017), sections 3.1, 3.2.4 (TextualBody), 4.2.1
 *   (FragmentSelector with `conformsTo` Media Fragments), 4.2.5 (SvgSelector), 5.1
 *   (AnnotationPage).
 */
import type { Estimate } from '../../imaging/plane.ts';
import type { StageData } from '../stage-data.ts';
import { clipRegion, type Region } from '../view-state.ts';
import { outlineFrom, outlineRegion, outlineSvg, type Point } from './spot-shape.ts';
import { words } from '../words.ts';

/** A spot of the reader's own. */
export interface OwnSpot {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly view: string;
  readonly region: Region;
  /** Corners, where the spot is not a rectangle; plate pixels. */
  readonly outline?: readonly Point[];
  /** ISO 8601, UTC. */
  readonly made: string;
}

/** Bytes: a file with ten thousand long notes is smaller. */
export const largestFile = 20e6;
/** Spots that one file may bring. */
const most = 1000;

const fragments = 'http://www.w3.org/TR/media-frags/';

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function word(value: unknown, longest: number): string | null {
  return typeof value === 'string' && value.length > 0 ? value.slice(0, longest) : null;
}

function regionFrom(value: unknown): Region | null {
  if (!isObject(value)) return null;
  const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((side) => value[side]);
  const all = [x, y, width, height];
  if (!all.every((n): n is number => typeof n === 'number' && Number.isFinite(n))) return null;
  return all[2] > 0 && all[3] > 0 ? { x: all[0], y: all[1], width: all[2], height: all[3] } : null;
}

function pointsFrom(value: unknown): Point[] | null {
  if (!Array.isArray(value) || value.length < 3 || value.length > 500) return null;
  const points = value.map((point: unknown) => {
    const [x, y] = (Array.isArray(point) ? point : []) as unknown[];
    return typeof x === 'number' && typeof y === 'number' ? ([x, y] as const) : null;
  });
  return points.every((point) => point !== null) ? points : null;
}

/** Read one kept spot; null when it is not one. */
export function ownSpotFrom(value: unknown): OwnSpot | null {
  if (!isObject(value)) return null;
  const region = regionFrom(value['region']);
  const [id, title, view] = [
    word(value['id'], 80),
    word(value['title'], 500),
    word(value['view'], 100),
  ];
  if (region === null || id === null || title === null || view === null) return null;
  const made = word(value['made'], 40) ?? '';
  const outline = pointsFrom(value['outline']);
  const note = word(value['note'], 20_000) ?? '';
  return { id, title, note, view, region, ...(outline === null ? {} : { outline }), made };
}

/** @param page Address of the plate's page, absolute, without fragment. */
export function toAnnotations(data: StageData, spots: readonly OwnSpot[], page: string): object {
  return {
    '@context': 'http://www.w3.org/ns/anno.jsonld',
    id: `${page}#own-spots`,
    type: 'AnnotationPage',
    items: spots.map((spot) => ({
      id: `${page}#spot=${spot.id}`,
      type: 'Annotation',
      motivation: 'commenting',
      ...(spot.made === '' ? {} : { created: spot.made }),
      body: [
        { type: 'TextualBody', value: spot.title, purpose: 'tagging', format: 'text/plain' },
        ...(spot.note === ''
          ? []
          : [
              {
                type: 'TextualBody',
                value: spot.note,
                purpose: 'commenting',
                format: 'text/plain',
              },
            ]),
      ],
      target: {
        type: 'SpecificResource',
        source: sourceOf(data, spot.view, page),
        selector: selectorOf(spot),
      },
    })),
  };
}

function selectorOf(spot: OwnSpot): object {
  const { x, y, width, height } = spot.region;
  if (spot.outline !== undefined) return { type: 'SvgSelector', value: outlineSvg(spot.outline) };
  return {
    type: 'FragmentSelector',
    conformsTo: fragments,
    value: `xywh=pixel:${[x, y, width, height].map(Math.round).join(',')}`,
  };
}

function sourceOf(data: StageData, view: string, page: string): string {
  const service = data.views.find((v) => v.id === view)?.service ?? `views/${view}`;
  return new URL(`${service}/full/max/0/default.jpg`, page).href;
}

function bodyText(body: unknown, purpose: string): string | null {
  const list: unknown[] = Array.isArray(body) ? body : [body];
  const found = list.filter(isObject).find((b) => b['purpose'] === purpose);
  return found ? word(found['value'], 20_000) : null;
}

function regionOfTarget(target: unknown): Region | null {
  const selector = isObject(target) ? target['selector'] : null;
  const value = isObject(selector) ? selector['value'] : null;
  const match =
    typeof value === 'string' &&
    /^xywh=(?:pixel:)?(\d{1,7}),(\d{1,7}),(\d{1,7}),(\d{1,7})$/.exec(value);
  if (!match) return null;
  const [x, y, width, height] = match.slice(1).map(Number);
  return width > 0 && height > 0 ? { x, y, width, height } : null;
}

function outlineOfTarget(target: unknown): Point[] | null {
  const selector = isObject(target) ? target['selector'] : null;
  const svg = isObject(selector) && selector['type'] === 'SvgSelector' ? selector['value'] : null;
  return typeof svg === 'string' ? outlineFrom(svg) : null;
}

function annotationSpot(value: unknown, data: StageData): OwnSpot | null {
  if (!isObject(value)) return null;
  const target = value['target'];
  const outline = outlineOfTarget(target);
  const written = outline === null ? regionOfTarget(target) : outlineRegion(outline);
  // Of a place that lies beside the plate nothing is left.
  const region = written === null ? null : clipRegion(written, data.frame);
  const source = isObject(target) ? word(target['source'], 2000) : null;
  const view = data.views.find((v) => source?.includes(`/views/${v.id}/`));
  const title = bodyText(value['body'], 'tagging') ?? bodyText(value['body'], 'commenting');
  if (region === null || view === undefined || title === null) return null;
  const note = bodyText(value['body'], 'tagging') ? bodyText(value['body'], 'commenting') : null;
  // Only such names as are given here: an author's spot keeps its own.
  const id = /#spot=(own-[a-z0-9-]{1,76})$/.exec(word(value['id'], 2000) ?? '')?.[1];
  return {
    id: id ?? `own-${region.x}-${region.y}-${region.width}-${region.height}`,
    title,
    note: note ?? '',
    view: view.id,
    region,
    ...(outline === null ? {} : { outline }),
    made: momentFrom(value['created']),
  };
}

/** A moment as XML Schema writes it, `2026-01-02T03:04:05Z`; nothing where it is not one. */
function momentFrom(value: unknown): string {
  const text = word(value, 40) ?? '';
  return /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/.test(text) ? text : '';
}

/** Read spots of this plate from an AnnotationPage, a list, or one annotation. */
export function fromAnnotations(text: string, data: StageData): Estimate<OwnSpot[]> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return { ok: false, reason: words.spots.notJson };
  }
  const items: unknown[] = Array.isArray(parsed)
    ? parsed
    : isObject(parsed) && Array.isArray(parsed['items'])
      ? parsed['items']
      : [parsed];
  const spots = new Map<string, OwnSpot>();
  for (const item of items) {
    const spot = spots.size < most ? annotationSpot(item, data) : null;
    if (spot !== null) spots.set(spot.id, spot);
  }
  return spots.size > 0
    ? { ok: true, value: [...spots.values()] }
    : { ok: false, reason: words.spots.nothing };
}
