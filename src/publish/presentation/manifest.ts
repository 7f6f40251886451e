/**
 * A plate for other institutions' programs: one Canvas in the base frame on which all views in
 * register are a Choice, and a Canvas of its own for each view that is not in register.
 * Different geometry is never a Choice.
 *
 * References
 * - IIIF Presentation API 3.0, sections 3, 4 and 5.
 * - IIIF cookbook 0033, "Choice": all options of a Choice align.
 */
import type { PlateRecord } from '../../records/plate.ts';
import type { PlateResult, ViewResult } from '../../records/result.ts';
import { physicalScale } from './physical-scale.ts';
import { registeredViews, thumbnail, viewBody, type Json, type ViewWords } from './view-body.ts';

export interface ManifestPlace {
  /** Address of the plate's page, absolute, with a slash at the end. */
  readonly plate: string;
  /** Address of the exhibit, absolute, with a slash at the end. */
  readonly exhibit: string;
  readonly provider: { readonly name: string; readonly homepage: string | null };
  readonly credit: string;
  /** Label and value of the record, in reading order. */
  readonly metadata: readonly (readonly [label: string, value: string])[];
}

const presentation = 'http://iiif.io/api/presentation/3/context.json';

export function plateManifest(
  record: PlateRecord,
  result: PlateResult,
  place: ManifestPlace,
  words: ViewWords,
): Json {
  const { language } = words;
  const say = (text: string) => ({ [language]: [text] });
  const inFrame = registeredViews(result);
  const alone = result.views.filter((view) => !view.registered);
  const first = inFrame[0] ?? alone[0];
  return {
    '@context': presentation,
    id: `${place.plate}manifest.json`,
    type: 'Manifest',
    label: say(record.title),
    // A word of care comes first, so that a program that shows a summary shows it.
    summary: say([record.advisory, record.description.positive].filter(Boolean).join(' ')),
    metadata: place.metadata.map(([label, value]) => ({ label: say(label), value: say(value) })),
    rights: record.rights.replace(/^https:/, 'http:'),
    requiredStatement: { label: say('Credit'), value: say(place.credit) },
    provider: [provider(place, language)],
    ...thumbnailOf(record, place.plate, first),
    homepage: [
      {
        id: place.plate,
        type: 'Text',
        label: say(record.title),
        format: 'text/html',
        language: [language],
      },
    ],
    seeAlso: [
      {
        id: `${place.plate}record.jsonld`,
        type: 'Dataset',
        label: say('Processing record'),
        format: 'application/ld+json',
        profile: 'http://www.w3.org/ns/prov#',
      },
      {
        id: `${place.plate}object.jsonld`,
        type: 'Dataset',
        label: say('Object record'),
        format: 'application/ld+json',
        profile: 'https://linked.art/ns/v1/linked-art.json',
      },
    ],
    rendering: [
      {
        id: `${place.plate}captures/`,
        type: 'Text',
        label: say('How it was photographed'),
        format: 'text/html',
        language: [language],
      },
    ],
    items: [
      ...(inFrame.length > 0 ? [frameCanvas(record, result, inFrame, place, words)] : []),
      ...alone.map((view) => loneCanvas(record, view, place, words)),
    ],
  };
}

function provider({ provider, exhibit }: ManifestPlace, language: string): Json {
  const label = { [language]: [provider.name] };
  const id = provider.homepage ?? exhibit;
  return { id, type: 'Agent', label, homepage: [{ id, type: 'Text', label, format: 'text/html' }] };
}

function frameCanvas(
  record: PlateRecord,
  result: PlateResult,
  views: readonly ViewResult[],
  { plate }: ManifestPlace,
  words: ViewWords,
): Json {
  const id = `${plate}canvas/plate`;
  const { width, height } = result.frame;
  const shown = record.advisory === undefined;
  const bodies = views.map((view) => viewBody(plate, view, words, shown));
  const service = physicalScale(result);
  return {
    id,
    type: 'Canvas',
    label: { [words.language]: [record.title] },
    width,
    height,
    ...thumbnailOf(record, plate, views[0]),
    ...(service.length > 0 ? { service } : {}),
    items: [painting(id, bodies.length === 1 ? bodies[0] : { type: 'Choice', items: bodies })],
    ...(record.spots.length > 0 ? { annotations: [spotPage(id, record, words.language)] } : {}),
  };
}

/** A covered plate shows nothing before somebody asks; the pictures themselves are asked for. */
function thumbnailOf({ advisory }: PlateRecord, plate: string, view: ViewResult): Json {
  return advisory === undefined ? { thumbnail: [thumbnail(plate, view)] } : {};
}

function loneCanvas(
  record: PlateRecord,
  view: ViewResult,
  { plate }: ManifestPlace,
  words: ViewWords,
): Json {
  const id = `${plate}canvas/${view.id}`;
  return {
    id,
    type: 'Canvas',
    label: { [words.language]: [`${words.label(view)}, not in register`] },
    width: view.width,
    height: view.height,
    ...thumbnailOf(record, plate, view),
    items: [painting(id, viewBody(plate, view, words, record.advisory === undefined))],
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
function spotPage(canvas: string, { spots }: PlateRecord, language: string): Json {
  return {
    id: `${canvas}/spots`,
    type: 'AnnotationPage',
    items: spots.map(({ id, region, title, note }) => ({
      id: `${canvas}/spots/${id}`,
      type: 'Annotation',
      motivation: 'commenting',
      body: {
        type: 'TextualBody',
        value: note === undefined ? title : `${title}. ${note}`,
        format: 'text/plain',
        language,
      },
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
