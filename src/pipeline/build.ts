/**
 * The whole exhibit: plates, a check of every text, pages. Astro publishes an empty page and
 * reports success when a Markdown plugin fails, so the texts are checked here first, and its
 * store of rendered texts is not trusted from one build to the next. Pages of plates that stand
 * already are: each plate has a key of all that they depend on (`src/integration/page-keys.ts`).
 */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { enoughForText, type Contrast, type Mode } from '../publish/theme/palette.ts';
import { beginPagesProcess, type PagesProcess } from './astro-process.ts';
import { checkTexts, textsDigest } from './check-texts.ts';
import { readContent, type ContentResult } from './content.ts';
import { contentLost } from './content/content-lost.ts';
import { finishedFolder } from './finished-folder.ts';
import { openReadings, type KeptReadings } from './kept-readings.ts';
import { formatFindings } from './format-findings.ts';
import { sharedInputs } from './page-inputs.ts';
import { withLock } from './lock.ts';
import type { Places } from './places.ts';
import { comeToStand, forgetStanding, staying } from './standing.ts';
import { makePlates, type MakeOptions } from './make-plates.ts';
import { nearFolder } from './near-folder.ts';
import { exhibitFault } from './plate-faults.ts';

const project = join(import.meta.dirname, '..', '..');

interface TextReport {
  /** 1 where something is an error. */
  readonly code: number;
  /** Why the content folder is not to be believed; null where it is. */
  readonly lost: string | null;
  /** Of the texts that were checked. */
  readonly digest: string;
}

/** Check every text and say what is wrong with it. */
async function reportTexts(
  content: ContentResult,
  readings: KeptReadings,
  quiet: boolean,
): Promise<TextReport> {
  const findings = await checkTexts(content, readings);
  await readings.save();
  const contrasts = content.theme?.contrasts ?? [];
  if (contrasts.length > 0 && !quiet) console.error(contrastLine(contrasts));
  const grave = findings.filter((f) => f.level !== 'note');
  if (grave.length > 0) console.error(formatFindings(grave));
  const code = grave.some((f) => f.level === 'error') ? 1 : 0;
  return { code, lost: contentLost(content), digest: textsDigest(content) };
}

/** The least contrast by day and by night, with the text that has it. */
function contrastLine(contrasts: readonly Contrast[]): string {
  const least = (mode: Mode) => {
    const [worst] = contrasts.filter((c) => c.mode === mode).sort((a, b) => a.ratio - b.ratio);
    return `${worst.ratio.toFixed(1)} : 1 (${worst.text} on ${worst.ground})`;
  };
  return `Contrast: at least ${least('light')} by day, ${least('dark')} by night; ${enoughForText} : 1 is needed.`;
}

/**
 * The pages alone, from results that are there; Astro's exit code.
 *
 * @param texts Digest of the texts that were checked: no others are published.
 * @param astro The process that makes them; one of its own where nothing is given.
 */
export async function buildPages(
  places: Places,
  texts?: string,
  astro: PagesProcess = beginPagesProcess(places),
): Promise<number> {
  try {
    // Astro writes into a folder of the project, whatever content it builds: one at a time.
    return await withLock(
      join(project, '.cache', 'pages-lock'),
      () => makePages(places, texts, astro),
      {
        onWait: () => {
          console.error('Waiting: another build of this project makes its pages.');
        },
      },
    );
  } finally {
    astro.stop();
  }
}

async function makePages(
  places: Places,
  texts: string | undefined,
  astro: PagesProcess,
): Promise<number> {
  let code = 1;
  await rm(join(places.pages, 'data-store.json'), { force: true });
  const told = {
    MIRRORLEAF_INPUTS: await sharedInputs(places.content),
    MIRRORLEAF_STANDING: places.out,
    ...(texts !== undefined && { MIRRORLEAF_TEXTS: texts }),
  };
  const make = async (out: string) => {
    code = await astro.build(out, told);
    return code === 0 && (await staying(places));
  };
  try {
    const made = await finishedFolder(
      places.out,
      (place) => nearFolder(place, join(project, '.astro', 'finished'), make),
      () => forgetStanding(places),
    );
    if (made) await comeToStand(places);
  } catch (error) {
    const sentence = exhibitFault(places.out, error);
    if (sentence === null) throw error;
    console.error(sentence);
    code = 1;
  }
  return code;
}

/** 0 done, 1 where a plate failed or a text has an error (the others are published) or there are no pages. */
export async function buildExhibit(options: MakeOptions): Promise<number> {
  // It loads what it needs while the content is read.
  const astro = beginPagesProcess(options.places);
  try {
    return await buildWith(astro, options);
  } finally {
    astro.stop();
  }
}

async function buildWith(astro: PagesProcess, options: MakeOptions): Promise<number> {
  const { places, quiet = false } = options;
  const readings = await openReadings(places);
  const plates = await makePlates({ ...options, readings });
  const content = plates.content ?? (await readContent(places.content, readings));
  const texts = await reportTexts(content, readings, quiet);
  const { lost } = texts;
  if (lost !== null) {
    console.error(
      `No pages were made: the content folder ${places.content} is not to be relied on, since ${lost}. What was published in ${places.out} is as it was.`,
    );
    return 1;
  }
  const started = performance.now();
  const pages = await buildPages(places, texts.digest, astro);
  if (pages === 0 && !quiet) {
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.error(`Pages: made in ${seconds} s. The exhibit is in ${places.out}`);
  }
  return pages === 0 ? Math.max(plates.code, texts.code) : 1;
}
