/** `npm run catalogue`: the plates as a PDF for paper, by a browser's print of the exhibit. */
import { resolve } from 'node:path';
import { printCatalogue } from '../src/pipeline/catalogue/print-catalogue.ts';
import { commonOptions, runCommand, textOption } from '../src/pipeline/command.ts';
import { dayOption } from '../src/pipeline/day-option.ts';
import { findPlaces } from '../src/pipeline/places.ts';
import { findBrowser } from './find-browser.mjs';

await runCommand(
  {
    summary:
      'Print plates of the built exhibit as a PDF: both readings at true size, record, history.',
    example: 'npm run catalogue -- inner-basin chart-desk --to catalogue.pdf',
    positionals: '[slug...] all of them where none is named',
    options: {
      to: { type: 'string', value: 'FILE', help: 'the PDF (default: catalogue.pdf)' },
      site: { type: 'string', value: 'FOLDER', help: 'the built exhibit (default: dist)' },
      language: { type: 'string', value: 'TAG', help: 'another than the exhibit’s first language' },
      date: { type: 'string', value: 'DAY', help: 'day in the colophon (default: today)' },
      quiet: commonOptions.quiet,
      help: commonOptions.help,
    },
  },
  async (given, slugs) => {
    const browser = findBrowser();
    if (browser === null) {
      console.error(
        'The catalogue is printed by Chromium or Google Chrome, and none was found. Install one, ' +
          'or set MIRRORLEAF_BROWSER to its path, then run the same command again.',
      );
      return 1;
    }
    const to = resolve(textOption(given, 'to') ?? 'catalogue.pdf');
    const { out } = findPlaces({ out: textOption(given, 'site') });
    const day = dayOption(given, 'date');
    const language = textOption(given, 'language');
    const made = await printCatalogue({ exhibit: out, slugs, browser, to, day, language });
    if (!made.ok) {
      console.error(made.reason);
      return 1;
    }
    if (given['quiet'] !== true) {
      console.log(`${to}: ${made.plates} plates on ${made.pages} pages.`);
    }
    return 0;
  },
);
