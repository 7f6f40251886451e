/** `npm run inspect`: the findings of every plate, with what to do about them. */
import { commonOptions, runCommand, textOption } from '../src/pipeline/command.ts';
import { ensureDemonstration } from '../src/pipeline/demonstration.ts';
import { findingsTable } from '../src/pipeline/inspect/findings-table.ts';
import { inspectPlates, type InspectSummary } from '../src/pipeline/inspect/inspect-plates.ts';
import { findPlaces } from '../src/pipeline/places.ts';
import { createReporter } from '../src/pipeline/reporter.ts';
import type { Finding } from '../src/records/finding.ts';

await runCommand(
  {
    summary: 'Look at the captures of every plate and say what is wrong and what to do.',
    example: 'npm run inspect -- harbour --content ../our-plates',
    positionals: '[slug...] all of them where none is named',
    options: {
      ...commonOptions,
      json: { type: 'boolean', help: 'findings and measurements for programs' },
      quiet: { type: 'boolean', help: 'no progress, and only findings of level error' },
    },
  },
  async (given, slugs) => {
    const places = findPlaces({ content: textOption(given, 'content') });
    const quiet = given['quiet'] === true;
    const reporter = createReporter(process.stderr, { quiet });
    await ensureDemonstration(places, reporter, { slugs });
    const found = await inspectPlates({ places, reporter, slugs });
    const all = [...found.collection, ...found.plates.flatMap((plate) => plate.findings)];
    const errors = all.filter((f) => f.level === 'error');
    if (given['json']) console.log(JSON.stringify(found, null, 1));
    else if (!quiet)
      console.log(findingsTable(found, Math.min(110, process.stdout.columns || 100)));
    else if (errors.length > 0) console.log(findingsTable(gravest(found)));
    return errors.length > 0 ? 1 : 0;
  },
);

/** The same without anything below an error. */
function gravest({ collection, plates }: InspectSummary): InspectSummary {
  const grave = (findings: readonly Finding[]) => findings.filter((f) => f.level === 'error');
  return {
    collection: grave(collection),
    plates: plates
      .map((plate) => ({
        ...plate,
        findings: grave(plate.findings),
        inspections: {},
        registrations: {},
      }))
      .filter((plate) => plate.findings.length > 0),
  };
}
