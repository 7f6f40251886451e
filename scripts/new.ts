/** `npm run new`: a new plate from a folder of photographs, or many from a register. */
import { commonOptions, runCommand, textOption } from '../src/pipeline/command.ts';
import { newPlate } from '../src/pipeline/new-plate.ts';
import { newPlateReport } from '../src/pipeline/new-plate/new-plate-report.ts';
import { importRegisterFiles } from '../src/pipeline/register/register-files.ts';
import { findPlaces } from '../src/pipeline/places.ts';
import { createReporter } from '../src/pipeline/reporter.ts';
import { WrongUse } from '../src/pipeline/wrong-use.ts';

await runCommand(
  {
    summary: 'Make a plate from a folder of photographs: copy them, fill in what can be known.',
    example: 'npm run new -- harbour --from ../photographs/harbour --content ../our-plates',
    positionals: 'SLUG, the name of the plate in addresses: lower-case letters, digits, hyphens',
    options: {
      from: { type: 'string', value: 'FOLDER', help: 'the photographs; never changed' },
      register: { type: 'string', value: 'FILE', help: 'instead: a table of plates (CSV, UTF-8)' },
      mapping: {
        type: 'string',
        value: 'FILE',
        help: 'with it: which column is which field (YAML)',
      },
      'dry-run': { type: 'boolean', help: 'with it: tell what would be done, write nothing' },
      ...commonOptions,
    },
  },
  async (given, names) => {
    const register = textOption(given, 'register');
    if (register !== undefined) {
      const mapping = textOption(given, 'mapping');
      if (mapping === undefined || names.length > 0) {
        throw new WrongUse('A register needs --mapping FILE, and names its plates itself.');
      }
      const places = findPlaces({ content: textOption(given, 'content') });
      return importRegisterFiles({
        register,
        mapping,
        content: places.content,
        dryRun: given['dry-run'] === true,
        quiet: given['quiet'] === true,
      });
    }
    const [slug] = names;
    const from = textOption(given, 'from');
    if (slug === undefined || names.length > 1 || from === undefined) {
      throw new WrongUse('Name one plate, and the folder of its photographs with --from.');
    }
    const { content } = findPlaces({ content: textOption(given, 'content') });
    const quiet = given['quiet'] === true;
    const reporter = createReporter(process.stderr, { quiet });
    const progress = (done: number, total: number) => {
      reporter.step('Copying', done, total);
    };
    const made = await newPlate({ slug, from, content, progress });
    if (!quiet) console.log(newPlateReport(made, process.cwd()));
    return made.findings.some(({ level, plate }) => level === 'error' && plate === slug) ? 1 : 0;
  },
);
