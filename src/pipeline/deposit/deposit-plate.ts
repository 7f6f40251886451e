/**
 * One plate as a bag for the archive: masters, derived files, records, and the plate's pages as
 * they were published. What is withheld is left out, with its name, unless it is asked for.
 */
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import program from '../../../package.json' with { type: 'json' };
import { plateTextWithout, sittingWithout } from '../../publish/deposit/without-withheld.ts';
import { premisDocument } from '../../publish/deposit/premis.ts';
import { plateIdentifier } from '../../publish/identifier.ts';
import type { PlateResult } from '../../records/result.ts';
import { veiledParts } from '../../records/veiled-parts.ts';
import type { ContentPlate, ContentResult } from '../content.ts';
import type { Places } from '../places.ts';
import { allFiles } from '../read.ts';
import { readResult, recordFile } from '../results.ts';
import { exists } from '../store.ts';
import { listFiles } from './bag-files.ts';
import { writeBag, type BagSource } from './write-bag.ts';

export interface DepositOptions {
  readonly places: Places;
  readonly content: ContentResult;
  /** Folder that the bag comes into, under the plate's slug. */
  readonly to: string;
  /** `YYYY-MM-DD`, for the bag's description. */
  readonly date: string;
  /** Whether captures that are withheld come along. */
  readonly withheld: boolean;
  /** Whether all tiles come along, and not the whole pictures alone. */
  readonly tiles: boolean;
}

export type Deposit =
  | { readonly ok: true; readonly folder: string; readonly files: number; readonly bytes: number }
  | { readonly ok: false; readonly reason: string };

export async function depositPlate(plate: ContentPlate, options: DepositOptions): Promise<Deposit> {
  const { places, to, content } = options;
  const folder = join(to, plate.slug);
  const fail = (reason: string): Deposit => ({ ok: false, reason: `${plate.slug}: ${reason}` });
  if (await exists(folder))
    return fail(`${folder} is there already, and a deposit is never changed.`);
  const result = await readResult(places, plate.slug);
  const { record } = plate;
  if (!result || !record) return fail('It has no result. Run `npm run build` first.');
  const page = join(places.out, 'plates', plate.slug, 'index.html');
  if (!(await exists(page))) return fail(`There is no page ${page}. Run \`npm run build\` first.`);
  const address = content.collection?.address ?? null;
  const root = address === null ? 'urn:mirrorleaf:' : address.replace(/\/*$/, '/');
  const identifier = plateIdentifier(record, plate.slug, root);
  const left = options.withheld ? [] : record.withheld;
  try {
    const files = await writeBag(folder, {
      sources: [
        ...masters(plate, result, left),
        ...derived(places, result),
        ...(await records(plate, left, options)),
        ...(await pages(plate.slug, options)),
      ],
      last: {
        path: 'records/premis.xml',
        text: (made) =>
          premisDocument(result, made, {
            identifier,
            program: `Mirrorleaf ${program.version}`,
            date: options.date,
          }),
      },
      info: bagInfo(plate, identifier, left.length, options),
    });
    const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
    return { ok: true, folder, files: files.length, bytes };
  } catch (error) {
    return fail((error as Error).message);
  }
}

function bagInfo(
  { record }: ContentPlate,
  identifier: string,
  left: number,
  { content, date }: DepositOptions,
): (readonly [string, string])[] {
  const institution = content.collection?.institution.name;
  return [
    ...(institution ? ([['Source-Organization', institution]] as const) : []),
    ['External-Identifier', identifier],
    ...(record?.objectNumber
      ? ([['Internal-Sender-Identifier', record.objectNumber]] as const)
      : []),
    ['External-Description', record?.title ?? ''],
    ['Bagging-Date', date],
    ['Bag-Software-Agent', `Mirrorleaf ${program.version}`],
    ...(left > 0 ? ([['Left-Out', `${left} captures, at the museum's wish`]] as const) : []),
  ];
}

/** Capture files with the digests of the last build. A file of a withheld capture has none. */
function masters(plate: ContentPlate, result: PlateResult, left: readonly string[]): BagSource[] {
  const known = new Map(
    result.sittings.flatMap(({ captures }) =>
      captures.flatMap(({ files }) => files.map(({ name, sha256 }) => [name, sha256] as const)),
    ),
  );
  const captures = plate.sittings.flatMap(({ record }) => record.captures);
  const files = (out: boolean) =>
    captures.filter(({ id }) => left.includes(id) === out).flatMap(allFiles);
  const hidden = new Set(files(true));
  // A blank field may serve an open capture as well: then it is no secret.
  for (const name of files(false)) hidden.delete(name);
  return plate.captureFiles
    .filter((name) => !hidden.has(name))
    .map((name) => ({
      path: `captures/${name}`,
      from: { file: join(plate.folder, 'captures', name) },
      sha256: known.get(name),
    }));
}

function derived(places: Places, { views }: PlateResult): BagSource[] {
  return views.flatMap((view) =>
    view.archive.map(({ name, folder, sha256 }) => ({
      path: `derived/${view.id}/${name}`,
      from: { file: join(places.cache, 'combine', folder, name) },
      sha256,
    })),
  );
}

/** What people wrote, in every language, and what the stages found out. */
async function records(
  { slug, folder, record, sittings }: ContentPlate,
  ids: readonly string[],
  { places, content }: DepositOptions,
): Promise<BagSource[]> {
  const hidden = sittings
    .flatMap((sitting) => sitting.record.captures)
    .filter(({ id }) => ids.includes(id));
  // Longest first, so that a file's name goes whole and not by the id in it.
  const names = hidden
    .flatMap((capture) => [...allFiles(capture), capture.id])
    .sort((a, b) => b.length - a.length);
  const veiled = veiledParts({ spots: [], looks: [], ...record, withheld: [...ids] });
  const left = { ids, names, veiled };
  const overlays = content.overlays.filter(({ plate }) => plate === slug);
  const written = [
    ...['plate.md', ...overlays.map(({ file }) => file)].map((file) => ({
      file,
      without: (text: string) => plateTextWithout(text, left),
    })),
    ...sittings.map(({ file }) => ({
      file,
      without: (text: string) => sittingWithout(text, left),
    })),
  ];
  const own = await Promise.all(
    written.map(async ({ file, without }) => ({
      path: `records/${file}`,
      from: { text: without(await readFile(join(folder, file), 'utf8')) },
    })),
  );
  const shared = content.overlays.filter(({ original }) => original === 'collection.md');
  const about = ['collection.md', ...shared.map(({ file }) => file)];
  const there = await Promise.all(about.map((file) => exists(join(places.content, file))));
  return [
    ...own,
    ...about
      .filter((_, n) => there[n])
      .map((file) => ({
        path: `records/${file}`,
        from: { file: join(places.content, file) },
      })),
    { path: 'records/record.json', from: { file: recordFile(places, slug) } },
  ];
}

/** Tiles of an image service: `x,y,w,h/...` below a view; whole pictures are under `full/`. */
const tile = /^views\/[^/]+\/(?:\d+,\d+,\d+,\d+|\w+\/\d+)\//;

/** The plate's pages in every language, its documents, and the styles, scripts and letters of them. */
async function pages(
  slug: string,
  { places, content, tiles }: DepositOptions,
): Promise<BagSource[]> {
  const below = async (folder: string) =>
    (await isFolder(join(places.out, folder)))
      ? (await listFiles(join(places.out, folder))).map((path) => ({ folder, path }))
      : [];
  const own = (await below(`plates/${slug}`)).filter(({ path }) => tiles || !tile.test(path));
  const [, ...further] = content.collection?.languages ?? [];
  const others = await Promise.all(further.map((tag) => below(`${tag}/plates/${slug}`)));
  return [...own, ...others.flat(), ...(await below('assets'))].map(({ folder, path }) => ({
    path: `site/${folder}/${path}`,
    from: { file: join(places.out, folder, path) },
  }));
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
}
