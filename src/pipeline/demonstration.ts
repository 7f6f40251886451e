/**
 * The demonstration's captures: rendered on the first build, since a repository is no place for
 * hundreds of megabytes that a seed can make again. Files are made in a private folder and moved
 * into `captures/` when a plate is complete; a stamp says which plan they were made from.
 */
import { availableParallelism } from 'node:os';
import { join, resolve } from 'node:path';
import { Piscina } from 'piscina';
import { readContent, type ContentPlate } from './content.ts';
import { demonstrationObjects } from './demonstration/objects.ts';
import type { PhotographJob } from './demonstration/plate-photographer.ts';
import { keyOf, type KeyPart } from './key.ts';
import { withLock } from './lock.ts';
import type { Places } from './places.ts';
import { pictureFiles } from './read.ts';
import type { Reporter } from './reporter.ts';
import { exists, readJson, writeWhole, type Store } from './store.ts';

/** Raised when the same plan would give other pictures. */
const renderVersion = 1;

const ownContent = resolve(import.meta.dirname, '..', '..', 'content');

/** Render what is missing or was made from another plan; nothing for any other content folder. */
export async function ensureDemonstration(
  places: Places,
  reporter: Reporter,
  { force = false } = {},
): Promise<void> {
  if (places.content !== ownContent) return;
  const store: Store = { root: places.cache, scratch: places.scratch };
  const lock = join(places.cache, 'demonstration.lock');
  await withLock(lock, () => renderMissing(places, store, reporter, force));
}

async function renderMissing(
  places: Places,
  store: Store,
  reporter: Reporter,
  force: boolean,
): Promise<void> {
  const { plates } = await readContent(places.content);
  const own = plates.filter(({ slug }) => demonstrationObjects.some((o) => o.slug === slug));
  const tasks: { plate: ContentPlate; stamp: string; key: string }[] = [];
  for (const plate of own) {
    const key = planKey(plate);
    const stamp = join(places.cache, 'demonstration', `${plate.slug}.json`);
    const kept = await readJson(stamp, (value) => (value as { key: string }).key);
    const current = kept.ok && kept.value === key && (await allThere(plate));
    if (force || !current) tasks.push({ plate, stamp, key });
  }
  if (tasks.length === 0) return;
  reporter.line(
    `Rendering the photographs of ${tasks.length} demonstration plates, once: about two to three minutes on two cores.`,
  );
  await photograph(tasks, store, reporter);
}

function planKey({ slug, sittings }: ContentPlate): string {
  const object = demonstrationObjects.find((o) => o.slug === slug);
  return keyOf({
    renderVersion,
    object: object as unknown as KeyPart,
    sittings: sittings.map(({ record }) => record as unknown as KeyPart),
  });
}

async function allThere({ folder, sittings }: ContentPlate): Promise<boolean> {
  const names = sittings.flatMap(({ record }) => record.captures.flatMap((c) => pictureFiles(c)));
  const found = await Promise.all(names.map((name) => exists(join(folder, 'captures', name))));
  return found.every(Boolean);
}

async function photograph(
  tasks: readonly { plate: ContentPlate; stamp: string; key: string }[],
  store: Store,
  reporter: Reporter,
): Promise<void> {
  const pool = new Piscina<PhotographJob, number>({
    filename: new URL('./demonstration/plate-photographer.ts', import.meta.url).href,
    maxThreads: Math.min(availableParallelism(), tasks.length),
  });
  let done = 0;
  try {
    await Promise.all(
      tasks.map(async ({ plate, stamp, key }) => {
        const count = await pool.run({
          slug: plate.slug,
          sittings: plate.sittings.map((sitting) => sitting.record),
          folder: join(plate.folder, `.captures-${process.pid}`),
          captures: join(plate.folder, 'captures'),
        });
        await writeWhole(store, stamp, JSON.stringify({ key }));
        done += 1;
        reporter.line(`${plate.slug}: ${count} photographs (${done} of ${tasks.length} plates)`);
      }),
    );
  } finally {
    await pool.destroy();
  }
}
