/** `npm run demo`: the captures of the demonstration plates, rendered again. */
import { resolve } from 'node:path';
import { commonOptions, countOption, runCommand, textOption } from '../src/pipeline/command.ts';
import { ensureDemonstration } from '../src/pipeline/demonstration.ts';
import { findPlaces } from '../src/pipeline/places.ts';
import { createReporter } from '../src/pipeline/reporter.ts';

await runCommand(
  {
    summary: 'Render the captures of the demonstration plates where they are missing or old.',
    example: 'npm run demo -- inner-basin --truth ../truth',
    positionals: '[slug...] all of them where none is named',
    options: {
      ...commonOptions,
      again: { type: 'boolean', help: 'render also what is current' },
      jobs: { type: 'string', value: 'N', help: 'threads (default: cores)' },
      truth: { type: 'string', value: 'FOLDER', help: 'also write what is true of each capture' },
    },
  },
  async (given, slugs) => {
    const truth = textOption(given, 'truth');
    const made = await ensureDemonstration(
      findPlaces({ content: textOption(given, 'content') }),
      createReporter(process.stderr, { quiet: given['quiet'] === true }),
      {
        slugs,
        again: given['again'] === true,
        jobs: countOption(given, 'jobs'),
        truth: truth ? resolve(truth) : undefined,
      },
    );
    if (made === 0 && given['quiet'] !== true)
      console.error('All demonstration captures are current.');
    return 0;
  },
);
