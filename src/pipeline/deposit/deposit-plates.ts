/** Several plates into bags, one after the other; the pages must be those of today's content. */
import { mkdir } from 'node:fs/promises';
import { readContent } from '../content.ts';
import { checkFreshness } from '../freshness.ts';
import type { Reporter } from '../reporter.ts';
import { WrongUse } from '../wrong-use.ts';
import { depositPlate, type DepositOptions } from './deposit-plate.ts';

export interface DepositsOptions extends Omit<DepositOptions, 'content'> {
  readonly reporter: Reporter;
  /** All plates where the list is empty. */
  readonly slugs: readonly string[];
}

/** 0 when every bag is made, 1 when one is not. */
export async function depositPlates({
  slugs,
  reporter,
  ...options
}: DepositsOptions): Promise<number> {
  const content = await readContent(options.places.content);
  const missing = slugs.find((slug) => !content.plates.some((plate) => plate.slug === slug));
  if (missing !== undefined) {
    const known = content.plates.map(({ slug }) => slug).join(', ');
    throw new WrongUse(`There is no plate "${missing}". The plates are: ${known || 'none'}.`);
  }
  const chosen = content.plates.filter(({ slug }) => slugs.length === 0 || slugs.includes(slug));
  const stale = (await checkFreshness(options.places)).filter((sentence) =>
    chosen.some(({ slug }) => sentence.includes(`"${slug}"`)),
  );
  if (stale.length > 0) {
    console.error([...stale, 'Run `npm run build` first.'].join('\n'));
    return 1;
  }
  await mkdir(options.to, { recursive: true });
  let failed = 0;
  for (const plate of chosen) {
    const deposit = await depositPlate(plate, { ...options, content });
    if (deposit.ok) {
      const megabytes = (deposit.bytes / 1e6).toFixed(1);
      reporter.line(`${plate.slug}: ${deposit.files} files, ${megabytes} MB in ${deposit.folder}`);
    } else {
      failed += 1;
      console.error(deposit.reason);
    }
  }
  return failed > 0 ? 1 : 0;
}
