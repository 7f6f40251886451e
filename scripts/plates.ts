/** `npm run plates`: the stages of every plate, up to its record. */
import {
  commonOptions,
  countOption,
  runCommand,
  shareOption,
  textOption,
} from '../src/pipeline/command.ts';
import { makePlates } from '../src/pipeline/make-plates.ts';
import { findPlaces } from '../src/pipeline/places.ts';

await runCommand(
  {
    summary: 'Read, inspect, align, combine and tile the plates that have changed.',
    example: 'npm run plates -- harbour --content ../our-plates',
    positionals: '[slug...] all of them where none is named',
    options: {
      ...commonOptions,
      jobs: { type: 'string', value: 'N', help: 'plates at the same time (default: cores)' },
      share: { type: 'string', value: 'i/n', help: 'only the i-th of n parts of the plates' },
    },
  },
  async (given, slugs) => {
    const { code } = await makePlates({
      places: findPlaces({ content: textOption(given, 'content') }),
      slugs,
      jobs: countOption(given, 'jobs'),
      share: shareOption(given),
      quiet: given['quiet'] === true,
    });
    return code;
  },
);
