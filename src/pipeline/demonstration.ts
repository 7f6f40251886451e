/**
 * The captures of the demonstration plates, rendered on this computer where they are missing or
 * old. Only a plate whose own `.gitignore` says that its captures are rendered is ever touched:
 * a museum's captures are nobody's to write.
 */
import { mkdir, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Piscina } from 'piscina';
import { z } from 'zod';
import { codeDigest } from './demonstration/code-digest.ts';
import { sceneOrders } from './demonstration/make-plate.ts';
import { type DemonstrationObject } from './demonstration/object.ts';
import { demonstrationObjects } from './demonstration/objects.ts';
import { type RenderJob } from './demonstration/render-worker.ts';
import { type Shoot, shootsOf } from './demonstration/shots.ts';
import { readSittings } from './demonstration/sittings.ts';
import { expectedSeconds, waitWords } from './demonstration-wait.ts';
import { keyOf, type KeyPart } from './key.ts';
import { withLock } from './lock.ts';
import { type Places } from './places.ts';
import { type Reporter } from './reporter.ts';
import { exists, keepFolder, readJson, type Store, writeWhole } from './store.ts';
import { takeTurns } from './turns.ts';

/** The line of a plate's `.gitignore` that gives its captures into our hands. */
export const renderedMark = '# captures are rendered by npm run demo';

export interface DemonstrationOptions {
  /** Only these plates; all where nothing is said. */
  readonly slugs?: readonly string[];
  /** The plates that can be rendered; the eight of the collection where nothing is said. */
  readonly objects?: readonly DemonstrationObject[];
  /** Render even what is current. */
  readonly again?: boolean;
  /** Threads; as many as there are cores where nothing is said. */
  readonly jobs?: number | undefined;
  /** Folder for the truth about each capture, outside the content folder. */
  readonly truth?: string | undefined;
  /** Whether the plates' stages come next: then their time is told as well. */
  readonly stagesFollow?: boolean;
}

interface Task {
  readonly object: DemonstrationObject;
  readonly shoots: readonly Shoot[];
  readonly plateFolder: string;
  readonly key: string;
}

const stampSchema = z.strictObject({
  key: z.string(),
  /** Sizes in bytes by name. */
  files: z.record(z.string(), z.number()),
});

/** Render the demonstration captures that are missing or old. Returns how many plates were rendered. */
export async function ensureDemonstration(
  places: Places,
  reporter: Reporter,
  options: DemonstrationOptions = {},
): Promise<number> {
  const root = join(places.cache, 'demonstration');
  const store: Store = { root, scratch: join(root, 'scratch') };
  const waiting = await openTasks(places, store, options);
  if (waiting.length === 0) return 0;
  const onWait = (sentence: string) => {
    reporter.line(sentence);
  };
  return withLock(
    join(root, 'lock'),
    async () => {
      // Another build may have done the work while this one waited.
      const tasks = await openTasks(places, store, options);
      if (tasks.length > 0) await renderAll(tasks, store, reporter, options);
      return tasks.length;
    },
    { onWait },
  );
}

async function openTasks(
  places: Places,
  store: Store,
  options: DemonstrationOptions,
): Promise<Task[]> {
  const ours: DemonstrationObject[] = [];
  for (const object of options.objects ?? demonstrationObjects) {
    if (options.slugs && options.slugs.length > 0 && !options.slugs.includes(object.slug)) continue;
    if (await isOurs(join(places.content, 'plates', object.slug))) ours.push(object);
  }
  if (ours.length === 0) return [];
  const code = await codeDigest('everything');
  const tasks: Task[] = [];
  for (const object of ours) {
    const plateFolder = join(places.content, 'plates', object.slug);
    const sittings = await readSittings(plateFolder);
    const shoots = sittings.flatMap((sitting) => shootsOf(object, sitting, sittings[0]));
    const key = keyOf([code, JSON.parse(JSON.stringify([object, shoots])) as KeyPart]);
    const task = { object, shoots, plateFolder, key };
    const current = !options.again && !options.truth && (await isCurrent(task, store));
    if (shoots.length > 0 && !current) tasks.push(task);
  }
  return tasks;
}

async function isOurs(plateFolder: string): Promise<boolean> {
  const text = await readFile(join(plateFolder, '.gitignore'), 'utf8').catch(() => '');
  return text.split(/\r?\n/).includes(renderedMark);
}

function stampFile(store: Store, { plateFolder, object }: Task): string {
  return join(store.root, 'stamps', `${object.slug}-${keyOf(plateFolder).slice(0, 12)}.json`);
}

async function isCurrent(task: Task, store: Store): Promise<boolean> {
  const stamp = await readJson(stampFile(store, task), (value) => stampSchema.parse(value));
  if (!stamp.ok || stamp.value.key !== task.key) return false;
  const sizes = await sizesOf(task, join(task.plateFolder, 'captures'));
  return keyOf(sizes) === keyOf(stamp.value.files);
}

/** Sizes of the files that a task writes, as far as they are there. */
async function sizesOf(task: Task, folder: string): Promise<Record<string, number>> {
  const sizes: Record<string, number> = {};
  for (const { file } of task.shoots.flatMap((shoot) => shoot.frames)) {
    const found = await stat(join(folder, file)).catch(() => null);
    if (found) sizes[file] = found.size;
  }
  return sizes;
}

async function renderAll(
  tasks: readonly Task[],
  store: Store,
  reporter: Reporter,
  options: DemonstrationOptions,
): Promise<void> {
  await rm(store.scratch, { recursive: true, force: true });
  const threads = Math.max(1, options.jobs ?? availableParallelism());
  const scenes = await codeDigest('scenes');
  const count = tasks.flatMap((t) => t.shoots.flatMap((s) => s.frames)).length;
  const seconds = await expectedSeconds(tasks, async (order) =>
    exists(join(store.root, 'scenes', keyOf([scenes, { ...order }]))),
  );
  const what = `${count} demonstration captures of ${tasks.length} plates`;
  const then = options.stagesFollow
    ? `; working through them then takes ${waitWords(seconds.stages / threads)}`
    : '';
  reporter.line(`Rendering ${what}, once: ${waitWords(seconds.rendering / threads)}${then}.`);
  const pool = new Piscina({
    filename: join(import.meta.dirname, 'demonstration', 'render-worker.ts'),
    minThreads: 1,
    maxThreads: threads,
    concurrentTasksPerWorker: 1,
  });
  let done = 0;
  // Scenes come before the captures that wait for them.
  const turn = takeTurns(threads);
  const run = (job: RenderJob) => turn(() => pool.run(job) as Promise<void>);
  const tell = (frames: number) => {
    done += frames;
    reporter.step('Rendered', done, count);
  };
  try {
    const results = await Promise.allSettled(
      tasks.map((task) => renderPlate(task, store, scenes, run, tell, options.truth)),
    );
    const failed = results.find((result) => result.status === 'rejected');
    if (failed) throw failed.reason;
  } finally {
    await pool.destroy();
  }
}

/** Render one plate into a private folder beside its captures, then put it in their place. */
async function renderPlate(
  task: Task,
  store: Store,
  scenesDigest: string,
  run: (job: RenderJob) => Promise<void>,
  tell: (frames: number) => void,
  truthRoot: string | undefined,
): Promise<void> {
  const { object, shoots, plateFolder } = task;
  const scenes = await Promise.all(
    sceneOrders(object).map(async (order) => {
      const key = keyOf([scenesDigest, { ...order }]);
      const folder = await keepFolder(store, 'scenes', key, (place) =>
        run({ kind: 'scene', order, folder: place }),
      );
      return { folder, width: order.width, height: order.height };
    }),
  );
  const draft = join(plateFolder, `captures.${process.pid}.part`);
  const truth = truthRoot ? join(truthRoot, object.slug) : null;
  await removeLeftovers(plateFolder);
  await mkdir(draft, { recursive: true });
  try {
    if (truth) await run({ kind: 'normals', object, scenes, base: shoots[0].base, truth });
    await Promise.all(
      shoots.map(async (shoot) => {
        await run({ kind: 'shoot', object, scenes, shoot, folder: draft, truth });
        tell(shoot.frames.length);
      }),
    );
    await replaceFolder(draft, join(plateFolder, 'captures'));
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
  const files = await sizesOf(task, join(plateFolder, 'captures'));
  await writeWhole(store, stampFile(store, task), `${JSON.stringify({ key: task.key, files })}\n`);
}

/** What a rendering that was killed left beside the captures; the lock keeps out those that live. */
async function removeLeftovers(plateFolder: string): Promise<void> {
  for (const name of await readdir(plateFolder)) {
    if (!/^captures\.\d+(\.old)?\.part$/.test(name)) continue;
    await rm(join(plateFolder, name), { recursive: true, force: true });
  }
}

async function replaceFolder(from: string, to: string): Promise<void> {
  const aside = `${to}.${process.pid}.old.part`;
  const there = await exists(to);
  if (there) await rename(to, aside);
  await rename(from, to);
  if (there) await rm(aside, { recursive: true, force: true });
}
