/** `npm run deposit`: plates as bags for the archive, and a check of any bag. */
import { resolve } from 'node:path';
import { commonOptions, runCommand, textOption } from '../src/pipeline/command.ts';
import { bagVerdictText } from '../src/pipeline/deposit/bag-verdict-text.ts';
import { checkBag } from '../src/pipeline/deposit/check-bag.ts';
import { depositPlates } from '../src/pipeline/deposit/deposit-plates.ts';
import { dayOption } from '../src/pipeline/day-option.ts';
import { findPlaces } from '../src/pipeline/places.ts';
import { createReporter } from '../src/pipeline/reporter.ts';
import { WrongUse } from '../src/pipeline/wrong-use.ts';

await runCommand(
  {
    summary: 'Put plates into bags (BagIt 1.0) for the archive, or check a bag.',
    example: 'npm run deposit -- harbour --to ../archive',
    positionals: '[slug...] all of them where none is named',
    options: {
      to: { type: 'string', value: 'FOLDER', help: 'where the bags come, one folder a plate' },
      check: { type: 'string', value: 'FOLDER', help: 'check this bag instead; it is not changed' },
      withheld: { type: 'boolean', help: 'with the captures that are withheld from publication' },
      tiles: { type: 'boolean', help: 'with every tile of the published pictures' },
      site: { type: 'string', value: 'FOLDER', help: 'the built exhibit (default: dist)' },
      date: { type: 'string', value: 'DAY', help: 'day in the description (default: today)' },
      ...commonOptions,
    },
  },
  async (given, slugs) => {
    const quiet = given['quiet'] === true;
    const check = textOption(given, 'check');
    if (check !== undefined) {
      const verdict = await checkBag(resolve(check));
      if (!quiet || !verdict.valid) console.log(bagVerdictText(check, verdict));
      return verdict.valid ? 0 : 1;
    }
    const to = textOption(given, 'to');
    if (to === undefined) throw new WrongUse('Say where the bags come with --to FOLDER.');
    const date = dayOption(given, 'date');
    return depositPlates({
      places: findPlaces({ content: textOption(given, 'content'), out: textOption(given, 'site') }),
      reporter: createReporter(process.stderr, { quiet }),
      slugs,
      to: resolve(to),
      date,
      withheld: given['withheld'] === true,
      tiles: given['tiles'] === true,
    });
  },
);
