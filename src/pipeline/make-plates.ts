/**
 * The plates step as a person sees it: demonstration captures rendered where they are missing,
 * stages run, findings told, and the exit code that says whether all is well.
 */
import { formatFindings } from './format-findings.ts';
import type { ContentResult } from './content.ts';
import { ensureDemonstration } from './demonstration.ts';
import { cacheFault } from './plate-faults.ts';
import type { Places } from './places.ts';
import { createReporter } from './reporter.ts';
import { runPlates, type RunOptions } from './run.ts';

export interface MakeOptions extends Omit<RunOptions, 'reporter'> {
  readonly places: Places;
  readonly quiet?: boolean;
}

export interface MadePlates {
  /** 0 when every plate has its result, 1 when one failed or the collection has an error. */
  readonly code: number;
  /** What was read, where no stage ran and it was therefore read a moment ago. */
  readonly content: ContentResult | null;
}

export async function makePlates({ quiet = false, ...options }: MakeOptions): Promise<MadePlates> {
  const reporter = createReporter(process.stderr, { quiet });
  await ensureDemonstration(options.places, reporter, { stagesFollow: true });
  const summary = await runPlates({ ...options, reporter }).catch((error: unknown) => {
    const sentence = cacheFault(options.places.cache, error);
    if (sentence === null) throw error;
    console.error(sentence);
    return null;
  });
  if (!summary) return { code: 1, content: null };
  const { content, plates } = summary;
  const findings = [...content.findings, ...plates.flatMap((plate) => plate.findings)];
  const grave = findings.filter((f) => f.level === 'error');
  if (grave.length > 0) console.error(formatFindings(grave));
  const others = findings.filter((f) => f.level === 'warning').length;
  if (others > 0) {
    reporter.line(`${others} warnings; \`npm run inspect\` shows them with what to do.`);
  }
  const idle = plates.every(({ state }) => state === 'unchanged');
  return { code: grave.length > 0 ? 1 : 0, content: idle ? content : null };
}
