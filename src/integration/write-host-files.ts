/** Files for static hosts into the finished folder: headers, and where former addresses lead. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ContentResult } from '../pipeline/content.ts';
import { headersFile, htaccessFile, redirectsFile } from '../publish/host-files.ts';

export async function writeHostFiles(
  { plates }: ContentResult,
  published: ReadonlySet<string>,
  out: string,
  base: string,
): Promise<void> {
  const moved = plates
    .filter(({ slug }) => published.has(slug))
    .flatMap(({ slug, record }) =>
      (record?.formerly ?? [])
        .filter((former) => !published.has(former))
        .map((former): [string, string] => [former, slug]),
    );
  const settings = { base, moved };
  await writeFile(join(out, '_headers'), headersFile(settings));
  if (moved.length > 0) await writeFile(join(out, '_redirects'), redirectsFile(settings));
  await writeFile(join(out, '.htaccess'), htaccessFile(settings));
}
