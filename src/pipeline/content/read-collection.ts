/** `collection.md`, and what lies beside it for how the exhibit looks. */
import { join } from 'node:path';
import { collectionSchema, type CollectionRecord } from '../../records/collection.ts';
import type { Finding } from '../../records/finding.ts';
import { toWrite } from '../../records/sitting-findings.ts';
import { placesToWrite } from '../../records/to-write.ts';
import { readFrontMatter } from '../../records/yaml-door.ts';
import { readText } from './read-text.ts';
import { readTheme, type Theme } from './read-theme.ts';

export interface CollectionRead {
  /** Null exactly when a finding of level error says why. */
  readonly collection: CollectionRecord | null;
  readonly collectionBody: string;
  readonly collectionBodyLine: number;
  /** Null where the collection is. */
  readonly theme: Theme | null;
  readonly findings: readonly Finding[];
}

/** @param root Real path of the content folder. */
export async function readCollection(folder: string, root: string): Promise<CollectionRead> {
  const file = 'collection.md';
  const text = await readText(join(folder, file), { root, plate: '', file });
  if (!text.ok) return noCollection([text.finding]);
  const read = readFrontMatter({ plate: '', file, text: text.text }, collectionSchema);
  if (!read.ok) return noCollection(read.findings);
  const { value, body, bodyLine, placeOf } = read;
  const open = placesToWrite(value).map((path) => toWrite(path, { plate: '', file, placeOf }));
  const theme = await readTheme(folder, root, value);
  const findings = [...open, ...theme.findings];
  return { collection: value, collectionBody: body, collectionBodyLine: bodyLine, theme, findings };
}

export function noCollection(findings: readonly Finding[]): CollectionRead {
  return { collection: null, collectionBody: '', collectionBodyLine: 1, theme: null, findings };
}
