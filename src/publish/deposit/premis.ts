/**
 * What happened to the files of a deposit, for the archive's own system: objects with their
 * digests, events with their dates as far as they are known, agents.
 *
 * References
 * - Library of Congress. PREMIS Data Dictionary for Preservation Metadata, version 3.0 (2015),
 *   and its XML schema. Event types are those of id.loc.gov/vocabulary/preservation/eventType.
 */
import type { PlateResult } from '../../records/result.ts';
import { xml, type XmlPart } from '../xml.ts';

export interface DepositFile {
  /** Within the bag: `data/captures/normal.tif`. */
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly sha512: string;
}

export interface DepositStory {
  /** Lasting name of the plate, a URI. */
  readonly identifier: string;
  readonly program: string;
  /** Day of the deposit, `YYYY-MM-DD`. */
  readonly date: string;
}

const eventType = 'http://id.loc.gov/vocabulary/preservation/eventType/';

const identifier = (kind: string, type: string, value: string): XmlPart => [
  `${kind}Identifier`,
  {},
  [`${kind}IdentifierType`, {}, type],
  [`${kind}IdentifierValue`, {}, value],
];

const link = (kind: string, type: string, value: string): XmlPart => [
  `linking${kind}Identifier`,
  {},
  [`linking${kind}IdentifierType`, {}, type],
  [`linking${kind}IdentifierValue`, {}, value],
];

function object({ path, bytes, sha256, sha512 }: DepositFile): XmlPart {
  const fixity = (algorithm: string, digest: string): XmlPart => [
    'fixity',
    {},
    ['messageDigestAlgorithm', {}, algorithm],
    ['messageDigest', {}, digest],
  ];
  return [
    'object',
    { 'xsi:type': 'file' },
    identifier('object', 'path', path),
    [
      'objectCharacteristics',
      {},
      fixity('SHA-256', sha256),
      fixity('SHA-512', sha512),
      ['size', {}, String(bytes)],
      ['format', {}, ['formatDesignation', {}, ['formatName', {}, mediaType(path)]]],
    ],
  ];
}

interface Told {
  readonly id: string;
  /** Last part of the type's address. */
  readonly type: string;
  readonly name: string;
  readonly date: string;
  readonly detail: string;
  readonly agent: string;
  readonly objects: readonly string[];
}

function event({ id, type, name, date, detail, agent, objects }: Told): XmlPart {
  return [
    'event',
    {},
    identifier('event', 'local', id),
    ['eventType', { valueURI: `${eventType}${type}` }, name],
    ['eventDateTime', {}, date],
    ['eventDetailInformation', {}, ['eventDetail', {}, detail]],
    link('Agent', 'local', agent),
    ...objects.map((path) => link('Object', 'path', path)),
  ];
}

/** A day that nobody recorded is said to be open (EDTF), not made up. */
const unknownDay = 'XXXX-XX-XX';

/** @param files Payload of the deposit. */
export function premisDocument(
  result: PlateResult,
  files: readonly DepositFile[],
  { identifier: plate, program, date }: DepositStory,
): string {
  const pathsOf = new Map<string, string[]>();
  for (const { sha256, path } of files) {
    pathsOf.set(sha256, [...(pathsOf.get(sha256) ?? []), path]);
  }
  const pathsIn = (digests: readonly string[]) =>
    digests.flatMap((digest) => (pathsOf.get(digest) ?? []).slice(0, 1));
  const captures = result.sittings.flatMap((sitting) =>
    sitting.captures.map((capture): Told => {
      const detail = `Photographed as capture ${capture.id}, set-up ${capture.setup} (${capture.setupKind}), reading ${capture.reading}.`;
      const day = sitting.date ?? unknownDay;
      const objects = pathsIn(capture.files.map(({ sha256 }) => sha256));
      const id = `capture-${sitting.id}-${capture.id}`;
      return {
        id,
        type: 'cap',
        name: 'capture',
        date: day,
        detail,
        agent: 'photographer',
        objects,
      };
    }),
  );
  const made = result.views.map((view): Told => {
    const derived = view.archive.map(({ sha256 }) => sha256);
    const objects = pathsIn([...view.sources, ...derived]);
    const id = `derivation-${view.id}`;
    const about = { type: 'cre', name: 'creation', agent: 'program' };
    return { id, ...about, date: unknownDay, detail: view.made, objects };
  });
  const masters = pathsIn(
    result.sittings.flatMap(({ captures: list }) =>
      list.flatMap((capture) => capture.files.map(({ sha256 }) => sha256)),
    ),
  );
  const fixity: Told = {
    id: 'fixity-check',
    type: 'fix',
    name: 'fixity check',
    date,
    detail: 'Each master was read and compared with the digest of the build that made the pages.',
    agent: 'program',
    objects: masters,
  };
  return xml([
    'premis',
    {
      xmlns: 'http://www.loc.gov/premis/v3',
      'xmlns:xsi': 'http://www.w3.org/2001/XMLSchema-instance',
      version: '3.0',
    },
    ['object', { 'xsi:type': 'intellectualEntity' }, identifier('object', 'URI', plate)],
    ...files.map(object),
    ...[...captures, ...made, fixity].map(event),
    agentPart('program', program, 'software'),
    agentPart('photographer', 'As recorded in the sitting', 'person'),
  ]);
}

function agentPart(id: string, name: string, type: string): XmlPart {
  return [
    'agent',
    {},
    identifier('agent', 'local', id),
    ['agentName', {}, name],
    ['agentType', {}, type],
  ];
}

const mediaTypes: Readonly<Record<string, string>> = {
  tif: 'image/tiff',
  tiff: 'image/tiff',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  json: 'application/json',
  jsonld: 'application/ld+json',
  html: 'text/html',
  css: 'text/css',
  js: 'text/javascript',
  md: 'text/markdown',
  yaml: 'application/yaml',
  woff2: 'font/woff2',
  svg: 'image/svg+xml',
};

function mediaType(path: string): string {
  const ending = path.slice(path.lastIndexOf('.') + 1).toLowerCase();
  return mediaTypes[ending] ?? 'application/octet-stream';
}
