/** `npm run build`: the exhibit in `dist/`. */
import { buildExhibit } from '../src/pipeline/build.ts';
import { commonOptions, countOption, runCommand, textOption } from '../src/pipeline/command.ts';
import { findPlaces } from '../src/pipeline/places.ts';

await runCommand(
  {
    summary: 'Build the exhibit: plates, then pages.',
    example: 'npm run build -- --content ../our-plates --out ../our-exhibit',
    options: {
      ...commonOptions,
      out: { type: 'string', value: 'FOLDER', help: 'where the exhibit goes (default: dist)' },
      jobs: { type: 'string', value: 'N', help: 'plates at the same time (default: cores)' },
    },
  },
  async (given) =>
    buildExhibit({
      places: findPlaces({
        content: textOption(given, 'content'),
        out: textOption(given, 'out'),
      }),
      jobs: countOption(given, 'jobs'),
      quiet: given['quiet'] === true,
    }),
);
