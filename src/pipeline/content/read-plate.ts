/** One plate's folder: its record, its sittings, the names of its files, and what does not fit. */
import { join } from 'node:path';
import { finding, type Finding } from '../../records/finding.ts';
import { slug as slugSchema } from '../../records/fields.ts';
import { plateSchema } from '../../records/plate.ts';
import { plateFindings } from '../../records/plate-findings.ts';
import { sittingSchema } from '../../records/sitting.ts';
import { sittingFindings } from '../../records/sitting-findings.ts';
import { readFrontMatter, readYaml, type PlaceOf } from '../../records/yaml-door.ts';
import type { ContentPlate, ContentSitting } from '../content.ts';
import { listCaptures } from './list-captures.ts';
import { listFolder, type FolderEntry } from './list-folder.ts';
import { readText } from './read-text.ts';

export type PlateFolderRead =
  | { readonly ok: true; readonly plate: ContentPlate }
  | { readonly ok: false; readonly finding: Finding };

/** Read `plates/<name>/`. Not ok: what is there cannot be a plate at all. */
export async function readPlateFolder(
  folder: string,
  entry: FolderEntry,
  root: string,
): Promise<PlateFolderRead> {
  const slug = entry.name;
  const shown = `plates/${slug}`;
  if (entry.kind === 'file') {
    const message = `${shown} is a file, and each plate is a folder.`;
    const remedy = 'Move it into the folder of its plate, or out of plates/.';
    const about = { level: 'note', plate: '', file: shown, code: 'stray-file' } as const;
    return { ok: false, finding: finding({ ...about, message, remedy }) };
  }
  if (!slugSchema.safeParse(slug).success) {
    const message = `The folder ${shown} cannot be an address. Expected lower-case letters, digits and single hyphens.`;
    const remedy = 'Rename the folder, for example to "harbour" or "fq-1911-14".';
    const about = { level: 'error', plate: '', file: shown, code: 'bad-slug' } as const;
    return { ok: false, finding: finding({ ...about, message, remedy }) };
  }
  return { ok: true, plate: await readPlate(folder, slug, root) };
}

async function readPlate(folder: string, slug: string, root: string): Promise<ContentPlate> {
  const captures = await listCaptures(folder, root, slug);
  const findings: Finding[] = [...captures.findings];
  const words = await readWords(folder, slug, root);
  findings.push(...words.findings);
  const sittings = await readSittings(folder, slug, root, findings);
  if (!captures.present) findings.push(noCaptures(slug));
  const files = captures.files;
  for (const { sitting, placeOf } of sittings) {
    const { record, file } = sitting;
    // Without the folder every file is missing, which has been said once.
    const known = captures.present ? files : null;
    findings.push(...sittingFindings(record, { plate: slug, file, files: known, placeOf }));
  }
  if (captures.present && sittings.length > 0) {
    findings.push(...unmentioned(slug, files, sittings.map(({ sitting }) => sitting)));
  }
  if (words.record && words.placeOf) {
    const records = sittings.map(({ sitting }) => sitting.record);
    const about = { plate: slug, file: 'plate.md', placeOf: words.placeOf };
    findings.push(...plateFindings(words.record, records, about));
  }
  const { record, body, bodyLine } = words;
  const list = sittings.map(({ sitting }) => sitting);
  return { slug, folder, record, body, bodyLine, sittings: list, captureFiles: files, findings };
}

async function readWords(folder: string, plate: string, root: string) {
  const file = 'plate.md';
  const text = await readText(join(folder, file), { root, plate, file });
  const none = { record: null, placeOf: null, body: '', bodyLine: 1 };
  if (!text.ok) return { ...none, findings: [text.finding] };
  const read = readFrontMatter({ plate, file, text: text.text }, plateSchema);
  if (!read.ok) return { ...none, findings: read.findings };
  const { value: record, placeOf, body, bodyLine } = read;
  return { record, placeOf, body, bodyLine, findings: [] };
}

interface SittingRead {
  readonly sitting: ContentSitting;
  readonly placeOf: PlaceOf;
}

/** `sitting.yaml` and everything under `sittings/`; at least one of them must be there. */
async function readSittings(
  folder: string,
  plate: string,
  root: string,
  findings: Finding[],
): Promise<SittingRead[]> {
  const several = await listFolder(join(folder, 'sittings'), root, plate, 'sittings');
  findings.push(...several.findings);
  const names = several.entries
    .filter(({ kind, name }) => kind === 'file' && /\.ya?ml$/.test(name))
    .map(({ name }) => `sittings/${name}`);
  const sittings: SittingRead[] = [];
  for (const file of ['sitting.yaml', ...names]) {
    const text = await readText(join(folder, file), { root, plate, file });
    if (!text.ok) {
      if (!text.absent) findings.push(text.finding);
      else if (names.length === 0) findings.push(noSitting(plate));
      continue;
    }
    const id = file.replace(/^sittings\/|\.ya?ml$/g, '');
    if (!slugSchema.safeParse(id).success) {
      findings.push(badSittingName(plate, file));
      continue;
    }
    const read = readYaml({ plate, file, text: text.text }, sittingSchema);
    if (read.ok) {
      sittings.push({ sitting: { id, file, record: read.value }, placeOf: read.placeOf });
    } else findings.push(...read.findings);
  }
  return sittings;
}

function noSitting(plate: string): Finding {
  return finding({
    level: 'error',
    plate,
    file: 'sitting.yaml',
    code: 'no-sitting',
    message: 'There is neither a sitting.yaml nor a file in sittings/, so no capture is known.',
    remedy: 'Write a sitting.yaml that lists the captures; `npm run new` makes one from a folder.',
  });
}

function badSittingName(plate: string, file: string): Finding {
  return finding({
    level: 'error',
    plate,
    file,
    code: 'bad-name',
    message: `The sitting ${file} cannot be named so. Expected lower-case letters, digits and hyphens.`,
    remedy: 'Name it after its day, such as sittings/2024-03-05.yaml.',
  });
}

function noCaptures(plate: string): Finding {
  return finding({
    level: 'error',
    plate,
    file: 'captures',
    code: 'no-captures',
    message: 'There is no folder captures/.',
    remedy: 'Put the photographs into captures/ beside plate.md.',
  });
}

/** One note for all files that no capture names: often a forgotten frame, never a reason to stop. */
function unmentioned(
  plate: string,
  files: readonly string[],
  sittings: readonly ContentSitting[],
): Finding[] {
  const named = new Set(
    sittings.flatMap(({ record }) =>
      record.captures.flatMap((capture) => [
        capture.file,
        capture.blank,
        capture.target?.file,
        ...(capture.frames ?? []).map((frame) => frame.file),
      ]),
    ),
  );
  const rest = files.filter((file) => !named.has(file));
  if (rest.length === 0) return [];
  const shown = rest.slice(0, 5).map((name) => `"${name}"`);
  const more = rest.length > shown.length ? ` and ${rest.length - shown.length} more` : '';
  return [
    finding({
      level: 'note',
      plate,
      file: 'captures',
      code: 'not-mentioned',
      message: `No sitting mentions ${shown.join(', ')}${more}.`,
      remedy: 'Add them to a sitting if they belong to the plate; they are not published.',
    }),
  ];
}
