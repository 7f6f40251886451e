/** `npm run dev`: live editing, at the addresses that the exhibit will have. */
import { runAstro } from '../src/pipeline/astro-process.ts';
import { commonOptions, runCommand, textOption } from '../src/pipeline/command.ts';
import { makePlates } from '../src/pipeline/make-plates.ts';
import { findPlaces } from '../src/pipeline/places.ts';

await runCommand(
  {
    summary: 'Edit texts and pages and see them at once.',
    example: 'npm run dev -- --content ../our-plates',
    options: {
      ...commonOptions,
      port: { type: 'string', value: 'N', help: 'port of the server (default: 4321)' },
    },
  },
  async (given) => {
    const places = findPlaces({ content: textOption(given, 'content') });
    // A plate that fails is told of here; the others can still be edited.
    await makePlates({ places, quiet: given['quiet'] === true });
    return runAstro(places, ['dev', '--port', textOption(given, 'port') ?? '4321']);
  },
);
