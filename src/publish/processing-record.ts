/**
 * The processing record of a plate: which picture came from which files, by which step, with
 * which figures. For a reader who wants to know what was done to what they see, and for the
 * archive that keeps it.
 *
 * References
 * - W3C (2013). PROV-O: The PROV Ontology. Recommendation, 30 April 2013.
 */
import type { CaptureResult, PlateResult, ViewResult } from '../records/result.ts';

type Node = Readonly<Record<string, unknown>>;

const context = {
  prov: 'http://www.w3.org/ns/prov#',
  dcterms: 'http://purl.org/dc/terms/',
  premis: 'http://www.loc.gov/premis/rdf/v3/',
  xsd: 'http://www.w3.org/2001/XMLSchema#',
  mirrorleaf: 'urn:mirrorleaf:',
  id: '@id',
  type: '@type',
};

export interface RecordAddress {
  /** Address or path of the plate's page, with a slash at the end. */
  readonly plate: string;
  /** Version of the program that made the results. */
  readonly programVersion: string;
}

/** The record as plain JSON-LD; entities are named by address (views) and by digest (files). */
export function processingRecord(
  result: PlateResult,
  { plate, programVersion }: RecordAddress,
): Node {
  const program = `urn:mirrorleaf:program:${programVersion}`;
  const captures = result.sittings.flatMap((sitting) =>
    sitting.captures.map((capture) => ({ sitting, capture })),
  );
  return {
    '@context': context,
    '@graph': [
      {
        id: program,
        type: ['prov:Agent', 'prov:SoftwareAgent'],
        'dcterms:title': `Mirrorleaf ${programVersion}`,
      },
      ...captures.flatMap(({ sitting, capture }) => [
        captureActivity(plate, sitting.id, sitting.date, capture),
        ...capture.files.map((file) => fileEntity(plate, sitting.id, capture, file)),
      ]),
      ...result.views.flatMap((view) => viewNodes(plate, program, view)),
    ],
  };
}

function captureActivity(
  plate: string,
  sitting: string,
  date: string | null,
  capture: CaptureResult,
): Node {
  return {
    id: captureId(plate, sitting, capture.id),
    type: 'prov:Activity',
    'dcterms:title': `Capture ${capture.id}, set-up ${capture.setup}`,
    ...(date === null ? {} : { 'dcterms:date': { '@value': date, '@type': 'xsd:date' } }),
  };
}

function fileEntity(
  plate: string,
  sitting: string,
  capture: CaptureResult,
  file: CaptureResult['files'][number],
): Node {
  return {
    id: fileId(file.sha256),
    type: 'prov:Entity',
    'dcterms:title': file.name,
    'dcterms:extent': `${file.width} × ${file.height} px, ${file.depth} bits per channel`,
    'premis:size': file.bytes,
    'prov:wasGeneratedBy': { id: captureId(plate, sitting, capture.id) },
  };
}

function viewNodes(plate: string, program: string, view: ViewResult): Node[] {
  const id = `${plate}views/${view.id}`;
  const activity = `${id}#made`;
  const { sources } = view;
  return [
    {
      id: activity,
      type: 'prov:Activity',
      ...(view.step === null ? {} : { 'dcterms:title': capitalised(view.step) }),
      'dcterms:description': view.made,
      ...listed('mirrorleaf:setting', view.settings, ({ name, value }) => ({ name, value })),
      ...listed('mirrorleaf:figure', view.figures, ({ label, value, unit }) => ({
        name: label,
        value,
        unit,
      })),
      'prov:used': sources.map((sha256) => ({ id: fileId(sha256) })),
      'prov:wasAssociatedWith': { id: program },
    },
    {
      id,
      type: 'prov:Entity',
      'dcterms:extent': `${view.width} × ${view.height} px`,
      'mirrorleaf:tiles': view.tiles,
      'prov:wasGeneratedBy': { id: activity },
      'prov:wasDerivedFrom': sources.map((sha256) => ({ id: fileId(sha256) })),
      'prov:wasAttributedTo': { id: program },
    },
    ...[
      ...view.layers.map(({ name, folder }) => ({
        id: `${id}/${name}/`,
        'dcterms:title': `Data planes: ${name}`,
        'mirrorleaf:tiles': folder,
      })),
      ...view.archive.map(({ sha256, label, bytes }) => ({
        id: fileId(sha256),
        'dcterms:title': label,
        'premis:size': bytes,
      })),
    ].map((part) => ({
      ...part,
      type: 'prov:Entity',
      'prov:wasGeneratedBy': { id: activity },
      'prov:wasDerivedFrom': sources.map((sha256) => ({ id: fileId(sha256) })),
    })),
  ];
}

/** Name, value and unit as literals of the program's own terms; nothing where there are none. */
function listed<T>(
  term: string,
  items: readonly T[],
  parts: (item: T) => { name: string; value: string | number | boolean; unit?: string },
): Node {
  if (items.length === 0) return {};
  const nodes = items.map((item) => {
    const { name, value, unit } = parts(item);
    return {
      'dcterms:title': name,
      'prov:value': value,
      ...(unit === undefined ? {} : { 'mirrorleaf:unit': unit }),
    };
  });
  return { [term]: nodes };
}

function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function captureId(plate: string, sitting: string, capture: string): string {
  return `${plate}captures/#${sitting}-${capture}`;
}

function fileId(sha256: string): string {
  return `urn:sha256:${sha256}`;
}
