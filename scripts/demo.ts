/** `npm run demo`: render the demonstration captures again. */
import { commonOptions, runCommand } from '../src/pipeline/command.ts';
import { ensureDemonstration } from '../src/pipeline/demonstration.ts';
import { findPlaces } from '../src/pipeline/places.ts';
import { createReporter } from '../src/pipeline/reporter.ts';

await runCommand(
  {
    summary: "Render the demonstration's captures again, from their seeds.",
    example: 'npm run demo',
    options: { quiet: commonOptions.quiet, help: commonOptions.help },
  },
  async (given) => {
    const reporter = createReporter(process.stderr, { quiet: given['quiet'] === true });
    await ensureDemonstration(findPlaces(), reporter, { force: true });
    return 0;
  },
);
