/** The sittings of a demonstration plate, in the order of their days. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'yaml';
import { sittingSchema, type SittingRecord } from '../../records/sitting.ts';

/** Sittings that can be read; one that cannot is told about by the content checks, not here. */
export async function readSittings(plateFolder: string): Promise<SittingRecord[]> {
  const several = join(plateFolder, 'sittings');
  const names = await readdir(several).catch(() => []);
  const files = [
    join(plateFolder, 'sitting.yaml'),
    ...names
      .filter((name) => name.endsWith('.yaml'))
      .sort()
      .map((name) => join(several, name)),
  ];
  const texts = await Promise.all(files.map((file) => readFile(file, 'utf8').catch(() => null)));
  return texts
    .flatMap((text) => {
      const found = text === null ? null : sittingSchema.safeParse(parse(text));
      return found?.success ? [found.data] : [];
    })
    .sort((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1));
}
