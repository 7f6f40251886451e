/** `npm start`: build the exhibit and serve it. */
import { runAstro } from '../src/pipeline/astro-process.ts';
import { buildExhibit } from '../src/pipeline/build.ts';
import { commonOptions, runCommand, textOption } from '../src/pipeline/command.ts';
import { findPlaces } from '../src/pipeline/places.ts';

await runCommand(
  {
    summary: 'Build the exhibit and serve it on this machine.',
    example: 'npm start -- --content ../our-plates --port 8080',
    options: {
      ...commonOptions,
      port: { type: 'string', value: 'N', help: 'port of the server (default: 4321)' },
    },
  },
  async (given) => {
    const places = findPlaces({ content: textOption(given, 'content') });
    const code = await buildExhibit({ places, quiet: given['quiet'] === true });
    if (code !== 0) console.error('Not everything is in order (see above); serving what is.');
    return runAstro(places, ['preview', '--port', textOption(given, 'port') ?? '4321']);
  },
);
