/**
 * A plate as a Linked Art HumanMadeObject, for museums' aggregators: what it is, who made it and
 * when, how large it is, what it looks like, and where its pages and pictures are. Only what the
 * record says.
 *
 * References
 * - Linked Art API 1.0, https://linked.art/api/1.0/: endpoint/physical_object, and of the shared
 *   structures statement, reference, type, timespan, dimension and digital. A reference needs an
 *   `id`: what the record names in words alone gets one under the plate's own address.
 * - Getty AAT ids: those of the model's own documentation, and of `vocabulary.ts`.
 */
import { parseEdtf } from '../records/edtf.ts';
import type { PlateRecord } from '../records/plate.ts';
import { sizeOf } from '../records/plate-sizes.ts';
import type { PlateResult } from '../records/result.ts';
import { processes } from '../records/vocabulary.ts';

type Node = Readonly<Record<string, unknown>>;

const aat = 'http://vocab.getty.edu/aat/';

export interface ObjectPlace {
  /** Lasting name of the plate, a URI. */
  readonly identifier: string;
  /** Address of the plate's page, with a slash at the end. */
  readonly page: string;
  /** Address of the exhibit, which stands for its museum where that has no page of its own. */
  readonly exhibit: string;
  readonly language: string;
  readonly institution: { readonly name: string; readonly homepage: string | null };
  readonly credit: string | null;
  /** Words of the interface for process, date and makers. */
  readonly process: string;
  readonly date: string | undefined;
  readonly makers: string | undefined;
  /** The record in other languages, as far as it has been translated. */
  readonly further: readonly ObjectTelling[];
}

/** What a museum says of a plate in one language. */
export interface ObjectTelling {
  readonly language: string;
  readonly title: string | undefined;
  readonly descriptions: readonly string[];
}

const typed = (id: string, label: string): Node => ({
  id: `${aat}${id}`,
  type: 'Type',
  _label: label,
});

/** AAT ids of the languages of the interface. */
const languages: Readonly<Record<string, string>> = {
  en: '300388277',
  fr: '300388306',
  de: '300388344',
  es: '300389311',
};

/** The language as a reference; none for one whose id is not listed above. */
function inLanguage(tag: string): Node {
  const id = languages[tag.split('-')[0]];
  return id === undefined
    ? {}
    : { language: [{ id: `${aat}${id}`, type: 'Language', notation: [tag] }] };
}

/** A sentence about the object, with the kind of sentence it is. */
function statement(kind: Node, content: string, language: string): Node {
  return {
    type: 'LinguisticObject',
    classified_as: [{ ...kind, classified_as: [typed('300418049', 'Brief Text')] }],
    content,
    ...inLanguage(language),
  };
}

function dimension(value: number, kind: Node): Node {
  const unit = { id: `${aat}300379097`, type: 'MeasurementUnit', _label: 'millimeters' };
  return { type: 'Dimension', classified_as: [kind], value, unit };
}

/** First and last moment that a date can mean; an end that is open or unknown is left out. */
function timeSpan(date: string | undefined, words: string | undefined): Node | undefined {
  const parsed = date === undefined ? null : parseEdtf(date);
  if (!parsed) return undefined;
  const moment = (day: number | null, time: string) =>
    typeof day === 'number' && Number.isFinite(day)
      ? `${new Date(day * 86_400_000).toISOString().slice(0, 10)}T${time}Z`
      : undefined;
  const name = { type: 'Name', content: words ?? parsed.text };
  return {
    type: 'TimeSpan',
    identified_by: [name],
    begin_of_the_begin: moment(parsed.first, '00:00:00'),
    end_of_the_end: moment(parsed.last, '23:59:59'),
  };
}

function production(record: PlateRecord, place: ObjectPlace): Node {
  return {
    type: 'Production',
    timespan: timeSpan(record.date, place.date),
    took_place_at: record.place
      ? [{ id: `${place.page}#place`, type: 'Place', _label: record.place }]
      : undefined,
    carried_out_by:
      record.maker.length > 0
        ? record.maker.map(({ name }, k) => ({
            id: `${place.page}#maker-${k + 1}`,
            type: 'Person',
            _label: name,
          }))
        : undefined,
    technique: [processType(record, place)],
    referred_to_by: place.makers
      ? [statement(typed('300435416', 'Creator Description'), place.makers, place.language)]
      : undefined,
  };
}

function processType({ process }: PlateRecord, { process: label, page }: ObjectPlace): Node {
  const own = typeof process === 'string' ? undefined : process.aat;
  const id = own ?? processes[typeof process === 'string' ? process : process.name];
  return { id: id ?? `${page}#process`, type: 'Type', _label: label };
}

/** The document; fields without a value are left out when it is written as JSON. */
export function linkedArtObject(
  record: PlateRecord,
  result: PlateResult,
  place: ObjectPlace,
): Node {
  const { language, page } = place;
  const sides = Array.isArray(record.size) ? sizeOf(record.size) : null;
  const say = (kind: Node, text: string) => statement(kind, text, language);
  return {
    '@context': 'https://linked.art/ns/v1/linked-art.json',
    id: place.identifier,
    type: 'HumanMadeObject',
    _label: record.title,
    classified_as: [processType(record, place), typed('300133025', 'Works of Art')],
    identified_by: [
      {
        type: 'Name',
        classified_as: [typed('300404670', 'Primary Name')],
        content: record.title,
        ...inLanguage(language),
      },
      ...place.further.flatMap(({ language: tag, title }) =>
        title === undefined ? [] : { type: 'Name', content: title, ...inLanguage(tag) },
      ),
      ...(record.objectNumber
        ? [
            {
              type: 'Identifier',
              classified_as: [typed('300312355', 'Accession Number')],
              content: record.objectNumber,
            },
          ]
        : []),
    ],
    referred_to_by: [
      say(typed('300435452', 'Description'), record.description.positive),
      say(typed('300435452', 'Description'), record.description.negative),
      ...place.further.flatMap(({ language: tag, descriptions }) =>
        descriptions.map((text) => statement(typed('300435452', 'Description'), text, tag)),
      ),
      ...(place.credit ? [say(typed('300435418', 'Acknowledgements'), place.credit)] : []),
      ...record.marks.map(({ transcription }) =>
        say(typed('300028702', 'Inscription'), transcription),
      ),
    ],
    dimension: sides
      ? [
          dimension(sides[0], typed('300055647', 'Width')),
          dimension(sides[1], typed('300055644', 'Height')),
        ]
      : undefined,
    produced_by: production(record, place),
    current_owner: [
      {
        id: place.institution.homepage ?? place.exhibit,
        type: 'Group',
        _label: place.institution.name,
      },
    ],
    representation: record.advisory
      ? undefined
      : result.views.map((view) => picture(record, place, view)),
    subject_of: [
      digital(page, 'text/html', record.title),
      {
        ...digital(`${page}manifest.json`, 'application/ld+json', 'IIIF manifest'),
        conforms_to: [{ id: 'http://iiif.io/api/presentation/3/', type: 'InformationObject' }],
      },
    ].map((carrier) => ({ type: 'LinguisticObject', digitally_carried_by: [carrier] })),
  };
}

function digital(address: string, format: string, label: string): Node {
  return {
    type: 'DigitalObject',
    _label: label,
    format,
    access_point: [{ id: address, type: 'DigitalObject' }],
  };
}

function picture(
  record: PlateRecord,
  { page }: ObjectPlace,
  view: PlateResult['views'][number],
): Node {
  const service = `${page}views/${view.id}`;
  const { width, height } = view.sizes[view.sizes.length - 1];
  return {
    type: 'VisualItem',
    digitally_shown_by: [
      {
        ...digital(`${service}/full/${width},${height}/0/default.jpg`, 'image/jpeg', view.made),
        classified_as: [typed('300215302', 'Digital Image')],
        digitally_available_via: [
          {
            type: 'DigitalService',
            access_point: [{ id: service, type: 'DigitalObject' }],
            conforms_to: [
              { id: 'http://iiif.io/api/image/3/level0.json', type: 'InformationObject' },
            ],
          },
        ],
        referred_to_by: [
          {
            type: 'LinguisticObject',
            classified_as: [typed('300435434', 'Copyright/License Statement')],
            content: record.rights,
          },
        ],
      },
    ],
  };
}
