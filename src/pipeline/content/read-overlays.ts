/**
 * The museum's texts in its further languages: `plate.fr.md`, `collection.fr.md`,
 * `techniques/raking.fr.md`. A fault in one costs that translation only: it is left out, the
 * page shows the original, and the exhibit is published all the same.
 */
import { join } from 'node:path';
import type { z } from 'zod';
import type { Finding } from '../../records/finding.ts';
import { joinOverlay } from '../../records/join-overlay.ts';
import {
  collectionOverlaySchema,
  overlayName,
  pageOverlaySchema,
  plateOverlaySchema,
  type CollectionOverlay,
  type PageOverlay,
  type PlateOverlay,
} from '../../records/overlay.ts';
import { toWrite } from '../../records/sitting-findings.ts';
import { placesToWrite } from '../../records/to-write.ts';
import { readFrontMatter, type PlaceOf } from '../../records/yaml-door.ts';
import type { ContentResult } from '../content.ts';
import { listFolder } from './list-folder.ts';
import { mapInTurn } from './map-in-turn.ts';
import { overlayFindings } from './overlay-findings.ts';
import { readText } from './read-text.ts';

export interface ContentOverlay {
  /** Slug; empty for a text that is about no single plate. */
  readonly plate: string;
  /** BCP 47, one of those that collection.md lists. */
  readonly language: string;
  /** Relative to the plate's folder, or to the content folder. */
  readonly file: string;
  /** The original, likewise. */
  readonly original: string;
  readonly record: PlateOverlay | CollectionOverlay | PageOverlay;
  readonly body: string;
  readonly bodyLine: number;
}

export interface OverlaysRead {
  /** Sound ones, by plate and name. */
  readonly overlays: readonly ContentOverlay[];
  readonly findings: readonly Finding[];
}

/** A folder in which originals stand, and the originals by the names of their files. */
interface Shelf {
  readonly plate: string;
  /** Relative to the content folder. */
  readonly folder: string;
  /** What stands before the name of a file in a finding. */
  readonly prefix: string;
  readonly schemaOf: (original: string) => z.ZodType<ContentOverlay['record']>;
  /** Null: it is there and cannot be read, which has been told. */
  readonly originals: ReadonlyMap<string, object | null>;
}

export type OverlaySource = Pick<ContentResult, 'folder' | 'collection' | 'plates' | 'pages'>;

/** Folders that are read at the same time. */
const width = 16;

/**
 * @param root Real path of the content folder.
 * @param kept Gives what was read of a plate's folder before, or reads it.
 */
export async function readOverlays(
  content: OverlaySource,
  root: string,
  kept: (plate: string, read: () => Promise<OverlaysRead>) => Promise<OverlaysRead>,
): Promise<OverlaysRead> {
  const languages = content.collection?.languages ?? null;
  const read = await mapInTurn(shelves(content), width, (shelf) => {
    const path = join(content.folder, shelf.folder);
    const now = () => readShelf(shelf, { path, root, languages });
    return shelf.plate === '' ? now() : kept(shelf.plate, now);
  });
  return {
    overlays: read.flatMap(({ overlays }) => overlays),
    findings: read.flatMap(({ findings }) => findings),
  };
}

interface Where {
  readonly path: string;
  readonly root: string;
  readonly languages: readonly string[] | null;
}

async function readShelf(shelf: Shelf, where: Where): Promise<OverlaysRead> {
  const listing = await listFolder(where.path, where.root, shelf.plate);
  // What else lies there has been told of by those who read it.
  const findings = listing.findings
    .filter(({ file }) => overlayName(file ?? ''))
    .map((fault) => leftOut({ ...fault, file: `${shelf.prefix}${fault.file}` }));
  const overlays: ContentOverlay[] = [];
  for (const { name, kind } of listing.entries) {
    if (kind !== 'file') continue;
    const one = await readOverlay(shelf, name, { ...where, path: join(where.path, name) });
    findings.push(...one.findings);
    if (one.overlay) overlays.push(one.overlay);
  }
  return { overlays, findings };
}

interface OverlayRead {
  readonly overlay: ContentOverlay | null;
  readonly findings: readonly Finding[];
}

/** One file of a shelf; nothing at all where its name is not that of a translation. */
async function readOverlay(
  { plate, prefix, originals, schemaOf }: Shelf,
  name: string,
  where: Where,
): Promise<OverlayRead> {
  const parts = overlayName(name);
  if (!parts) return { overlay: null, findings: [] };
  const { original, language } = parts;
  const { languages, path, root } = where;
  const file = `${prefix}${name}`;
  const about = { plate, file, language };
  const there = [...originals.keys()];
  const misplaced = overlayFindings.name({ ...about, original, there, languages });
  if (misplaced) return { overlay: null, findings: [misplaced] };
  const text = await readText(path, { root, plate, file });
  if (!text.ok) return { overlay: null, findings: [leftOut(text.finding)] };
  const read = readFrontMatter({ plate, file, text: text.text }, schemaOf(original));
  if (!read.ok) return { overlay: null, findings: read.findings.map(leftOut) };
  const { value: record, body, bodyLine, placeOf } = read;
  const findings = partFindings(originals.get(original) ?? null, record, { ...about, placeOf });
  const overlay = { ...about, original: `${prefix}${original}`, record, body, bodyLine };
  return { overlay, findings };
}

function partFindings(
  original: object | null,
  record: ContentOverlay['record'],
  about: { plate: string; file: string; language: string; placeOf: PlaceOf },
): Finding[] {
  const open = placesToWrite(record).map((path) => toWrite(path, about));
  if (original === null) return open;
  const { stray, translated } = joinOverlay(original, record);
  return [
    ...open,
    ...stray.map((path) => overlayFindings.stray(path, record, about)),
    ...overlayFindings.alternatives(original, translated, about),
  ];
}

/** The fault of an overlay is not one of its original. */
function leftOut(fault: Finding): Finding {
  const remedy = `${fault.remedy} Until then the original is shown in its place.`;
  return { ...fault, level: 'warning', remedy };
}

function shelves({ collection, plates, pages }: OverlaySource): Shelf[] {
  const page = (folder: string) => (file: string) =>
    folder === '' && file === 'collection.md' ? collectionOverlaySchema : pageOverlaySchema;
  const top = ['', 'techniques', 'lessons'].map((folder) => {
    const prefix = folder === '' ? '' : `${folder}/`;
    const here = pages.filter(({ file }) => file.replace(/[^/]*$/, '') === prefix);
    const originals = new Map<string, object | null>(
      here.map(({ file, record }) => [file.slice(prefix.length), record]),
    );
    if (folder === '') originals.set('collection.md', collection);
    return { plate: '', folder, prefix, schemaOf: page(folder), originals };
  });
  const each = plates.map(({ slug, record }) => ({
    plate: slug,
    folder: `plates/${slug}`,
    prefix: '',
    schemaOf: () => plateOverlaySchema,
    originals: new Map([['plate.md', record]]),
  }));
  return [...top, ...each];
}
