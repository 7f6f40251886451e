/**
 * A plate for other institutions' programs: one Canvas in the base frame on which all views in
 * register are a Choice, and a Canvas of its own for each view that is not in register.
 * Different geometry is never a Choice. Every word is there in each language of the exhibit.
 *
 * References
 * - IIIF Presentation API 3.0, sections 3, 4 and 5.
 * - IIIF cookbook 0033, "Choice": all options of a Choice align.
 * - IIIF cookbook 0346: a comment in several languages is a Choice of bodies.
 */
import type { PlateRecord } from '../../records/plate.ts';
import type { PlateResult, ViewResult } from '../../records/result.ts';
import { languageMap } from './language-map.ts';
import { physicalScale } from './physical-scale.ts';
import { registeredViews, thumbnail, viewBody, type Json, type ViewWords } from './view-body.ts';

export interface ManifestPlace {
  /** Address of the plate's page, absolute, with a slash at the end. */
  readonly plate: string;
  /** The museum's own page, else the exhibit's, absolute. */
  readonly provider: string;
}

/** A plate as it is told in one language. */
export interface PlateTelling extends ViewWords {
  readonly record: PlateRecord;
  /** Address of the plate's page in this language. */
  readonly page: string;
  readonly provider: string;
  readonly credit: string;
  /** Label and value of the record, in reading order; the same lines in every language. */
  readonly metadata: readonly (readonly [label: string, value: string])[];
  readonly words: {
    readonly credit: string;
    readonly processing: string;
    readonly objectRecord: string;
    readonly how: string;
    readonly apart: (view: string) => string;
  };
}

const presentation = 'http://iiif.io/api/presentation/3/context.json';

/** @param tellings In each language of the exhibit, its first one first. */
export function plateManifest(
  result: PlateResult,
  place: ManifestPlace,
  tellings: readonly PlateTelling[],
): Json {
  const [{ record, metadata }] = tellings;
  const say = (text: (telling: PlateTelling) => string) => languageMap(tellings, text);
  const page = (label: (telling: PlateTelling) => string, within = '') =>
    tellings.map((telling) => ({
      id: `${telling.page}${within}`,
      type: 'Text',
      label: say(label),
      format: 'text/html',
      language: [telling.language],
    }));
  const inFrame = registeredViews(result);
  const alone = result.views.filter((view) => !view.registered);
  const first = inFrame[0] ?? alone[0];
  return {
    '@context': presentation,
    id: `${place.plate}manifest.json`,
    type: 'Manifest',
    label: say(title),
    // A word of care comes first, so that a program that shows a summary shows it.
    summary: say(({ record: { advisory, description } }) =>
      [advisory, description.positive].filter(Boolean).join(' '),
    ),
    metadata: metadata.map((_, k) => ({
      label: say((telling) => telling.metadata[k][0]),
      value: say((telling) => telling.metadata[k][1]),
    })),
    rights: record.rights.replace(/^https:/, 'http:'),
    requiredStatement: {
      label: say(({ words }) => words.credit),
      value: say(({ credit }) => credit),
    },
    provider: [provider(place, tellings)],
    ...thumbnailOf(record, place.plate, first),
    homepage: page(title),
    seeAlso: [
      {
        id: `${place.plate}record.jsonld`,
        type: 'Dataset',
        label: say(({ words }) => words.processing),
        format: 'application/ld+json',
        profile: 'http://www.w3.org/ns/prov#',
      },
      {
        id: `${place.plate}object.jsonld`,
        type: 'Dataset',
        label: say(({ words }) => words.objectRecord),
        format: 'application/ld+json',
        profile: 'https://linked.art/ns/v1/linked-art.json',
      },
    ],
    rendering: page(({ words }) => words.how, 'captures/'),
    items: [
      ...(inFrame.length > 0 ? [frameCanvas(result, inFrame, place, tellings)] : []),
      ...alone.map((view) => loneCanvas(view, place, tellings)),
    ],
  };
}

const title = ({ record }: PlateTelling) => record.title;

function provider({ provider: id }: ManifestPlace, tellings: readonly PlateTelling[]): Json {
  const label = languageMap(tellings, (telling) => telling.provider);
  return { id, type: 'Agent', label, homepage: [{ id, type: 'Text', label, format: 'text/html' }] };
}

function frameCanvas(
  result: PlateResult,
  views: readonly ViewResult[],
  { plate }: ManifestPlace,
  tellings: readonly PlateTelling[],
): Json {
  const [{ record }] = tellings;
  const id = `${plate}canvas/plate`;
  const { width, height } = result.frame;
  const shown = record.advisory === undefined;
  const bodies = views.map((view) => viewBody(plate, view, tellings, shown));
  const service = physicalScale(result);
  return {
    id,
    type: 'Canvas',
    label: languageMap(tellings, title),
    width,
    height,
    ...thumbnailOf(record, plate, views[0]),
    ...(service.length > 0 ? { service } : {}),
    items: [painting(id, bodies.length === 1 ? bodies[0] : { type: 'Choice', items: bodies })],
    ...(record.spots.length > 0 ? { annotations: [spotPage(id, tellings)] } : {}),
  };
}

/** A covered plate shows nothing before somebody asks; the pictures themselves are asked for. */
function thumbnailOf({ advisory }: PlateRecord, plate: string, view: ViewResult): Json {
  return advisory === undefined ? { thumbnail: [thumbnail(plate, view)] } : {};
}

function loneCanvas(
  view: ViewResult,
  { plate }: ManifestPlace,
  tellings: readonly PlateTelling[],
): Json {
  const [{ record }] = tellings;
  const id = `${plate}canvas/${view.id}`;
  return {
    id,
    type: 'Canvas',
    label: languageMap(tellings, ({ label, words }) => words.apart(label(view))),
    width: view.width,
    height: view.height,
    ...thumbnailOf(record, plate, view),
    items: [painting(id, viewBody(plate, view, tellings, record.advisory === undefined))],
  };
}

function painting(canvas: string, body: Json): Json {
  return {
    id: `${canvas}/page`,
    type: 'AnnotationPage',
    items: [
      {
        id: `${canvas}/page/painting`,
        type: 'Annotation',
        motivation: 'painting',
        target: canvas,
        body,
      },
    ],
  };
}

/** The author's spots as comments on their regions (Web Annotation Data Model). */
function spotPage(canvas: string, tellings: readonly PlateTelling[]): Json {
  const [{ record }] = tellings;
  return {
    id: `${canvas}/spots`,
    type: 'AnnotationPage',
    items: record.spots.map(({ id, region }, k) => ({
      id: `${canvas}/spots/${id}`,
      type: 'Annotation',
      motivation: 'commenting',
      body: spotBody(k, tellings),
      target: {
        type: 'SpecificResource',
        source: canvas,
        selector: {
          type: 'FragmentSelector',
          conformsTo: 'http://www.w3.org/TR/media-frags/',
          value: `xywh=${region.x},${region.y},${region.width},${region.height}`,
        },
      },
    })),
  };
}

/** The k-th spot in words. */
function spotBody(k: number, tellings: readonly PlateTelling[]): Json {
  const said = languageMap(tellings, ({ record }) => {
    const { title: name, note } = record.spots[k];
    return note === undefined ? name : `${name}. ${note}`;
  }) as Readonly<Record<string, readonly [string]>>;
  const bodies = Object.entries(said).map(([language, [value]]) => ({
    type: 'TextualBody',
    value,
    format: 'text/plain',
    language,
  }));
  return bodies.length === 1 ? bodies[0] : { type: 'Choice', items: bodies };
}
