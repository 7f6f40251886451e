/** `npm run plan`: numbers for a set-up on the command line, as the planner page has them. */
import { writeFile } from 'node:fs/promises';
import { resultsTable } from '../src/pipeline/plan/results-table.ts';
import { planInputOf } from '../src/pipeline/plan/plan-options.ts';
import { setupsYaml } from '../src/components/planner/setups-yaml.ts';
import { fieldUnits } from '../src/components/planner/fields.ts';
import { planValue } from '../src/components/planner/plan-value.ts';
import { warningText } from '../src/components/planner/results.ts';
import { planSetUp } from '../src/optics/plan/plan-set-up.ts';
import { exampleInput, planLimits, type PlanField } from '../src/optics/plan/plan-input.ts';
import { commonOptions, runCommand } from '../src/pipeline/command.ts';
import { WrongUse } from '../src/pipeline/wrong-use.ts';
import { planner as words } from '../src/words/en/planner.ts';
import { measuresIn } from '../src/words/measures.ts';

const speech = { words, measures: measuresIn('en') };

const fieldHelp = Object.fromEntries(
  (Object.keys(planLimits) as PlanField[]).map((field) => {
    const [label, unit] = [words.fields[field], fieldUnits[field]];
    return [
      optionName(field),
      {
        type: 'string' as const,
        value: 'N',
        help: `${label}${unit ? `, ${unit}` : ''} (${exampleInput[field]})`,
      },
    ];
  }),
);

/** `plateWidth` to `plate-width`. */
function optionName(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

await runCommand(
  {
    summary: 'Plan a set-up: where lamp, mask, glass and panel must stand, and what it costs.',
    example:
      'npm run plan -- --plate-width 108 --plate-height 140 --from inner-basin --setups plan.yaml',
    options: {
      content: commonOptions.content,
      help: commonOptions.help,
      from: {
        type: 'string',
        value: 'PLATE',
        help: 'start from what this plate’s sitting says (PLATE or PLATE/SITTING)',
      },
      ...fieldHelp,
      json: { type: 'boolean', help: 'input, figures, warnings and set-ups for programs' },
      setups: {
        type: 'string',
        value: 'FILE',
        help: 'write a setups: block to a file that is not there yet, or "-"',
      },
    },
  },
  async (given) => {
    const { input, notes } = await planInputOf(given, optionName);
    let plan;
    try {
      plan = planSetUp(input);
    } catch (fault) {
      throw new WrongUse((fault as Error).message);
    }
    const yaml = setupsYaml(plan);
    if (given['json'] === true) console.log(JSON.stringify({ input, ...plan }, null, 1));
    else if (given['setups'] === '-') console.log(yaml.trimEnd());
    else {
      console.log(
        resultsTable(plan, notes, {
          words,
          value: (value, unit) => planValue(value, unit, speech),
          warning: (warning) => warningText(warning, speech),
        }),
      );
    }
    if (typeof given['setups'] === 'string' && given['setups'] !== '-') {
      await writeNew(given['setups'], yaml);
      console.error(`The set-ups are in ${given['setups']}.`);
    }
    return 0;
  },
);

/** Never over something that a person has written. */
async function writeNew(file: string, text: string): Promise<void> {
  try {
    await writeFile(file, text, { flag: 'wx' });
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw fault;
    throw new WrongUse(
      `${file} is there already. Name a file that is not, or "-" to see the block.`,
    );
  }
}
