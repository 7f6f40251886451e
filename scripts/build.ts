/** `npm run build`: the exhibit in `dist/`. */
import { resolve } from 'node:path';
import { buildExhibit } from '../src/pipeline/build.ts';
import { commonOptions, countOption, runCommand, textOption } from '../src/pipeline/command.ts';
import { writeGalleryZip } from '../src/pipeline/portable/gallery-zip.ts';
import { findPlaces } from '../src/pipeline/places.ts';

await runCommand(
  {
    summary: 'Build the exhibit: plates, then pages.',
    example: 'npm run build -- --content ../our-plates --out ../our-exhibit',
    options: {
      ...commonOptions,
      out: { type: 'string', value: 'FOLDER', help: 'where the exhibit goes (default: dist)' },
      zip: {
        type: 'string',
        value: 'FILE',
        help: 'also one archive for a gallery’s computer, with a tiny server',
      },
      jobs: { type: 'string', value: 'N', help: 'plates at the same time (default: cores)' },
    },
  },
  async (given) => {
    const places = findPlaces({
      content: textOption(given, 'content'),
      out: textOption(given, 'out'),
    });
    const quiet = given['quiet'] === true;
    const code = await buildExhibit({ places, jobs: countOption(given, 'jobs'), quiet });
    const file = textOption(given, 'zip');
    if (file === undefined) return code;
    return Math.max(code, await writeGalleryZip(places, resolve(file), quiet));
  },
);
