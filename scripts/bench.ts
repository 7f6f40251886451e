/** `npm run bench -- [group...]`: measured comparisons, as a table or as JSON. */
import { cpus, totalmem } from 'node:os';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { commonOptions, runCommand } from '../src/pipeline/command.ts';
import { WrongUse } from '../src/pipeline/wrong-use.ts';
import type { BenchRow } from './bench/row.ts';

const folder = join(import.meta.dirname, 'bench');
const groups = readdirSync(folder)
  .filter((name) => name.endsWith('.ts') && name !== 'row.ts')
  .map((name) => name.slice(0, -'.ts'.length))
  .sort();

/** A line of the table; `names` is the width of the column of names. */
function format(row: BenchRow, names: number): string {
  const goal = row.goal === null ? '' : `${row.better === 'lower' ? '≤' : '≥'} ${row.goal}`;
  const beside = row.reference ? `${row.reference.name}: ${row.reference.value}` : '';
  const value = `${Number(row.value.toPrecision(4))} ${row.unit}`;
  const name = row.name.padEnd(names);
  return `${row.group.padEnd(14)}${name}${value.padEnd(20)}${goal.padEnd(12)}${beside}`;
}

await runCommand(
  {
    summary: `Measure, beside reference programs in the same run. Groups: ${groups.join(', ')}.`,
    example: 'npm run bench -- tiling --json',
    positionals: '[group...] all of them where none is named',
    options: { ...commonOptions, json: { type: 'boolean', help: 'an array of rows' } },
  },
  async (given, chosen) => {
    const unknown = chosen.find((name) => !groups.includes(name));
    if (unknown) throw new WrongUse(`There is no group "${unknown}": ${groups.join(', ')}.`);
    const rows: BenchRow[] = [];
    for (const group of chosen.length > 0 ? chosen : groups) {
      const module = (await import(join(folder, `${group}.ts`))) as {
        default: () => Promise<BenchRow[]>;
      };
      const found = await module.default();
      rows.push(...found);
      if (given['json']) continue;
      const names = Math.max(28, ...found.map(({ name }) => name.length + 2));
      for (const row of found) console.log(format(row, names));
    }
    if (given['json']) console.log(JSON.stringify(rows, null, 1));
    else {
      const gigabytes = Math.round(totalmem() / 2 ** 30);
      console.log(`On ${cpus().length} × ${cpus()[0]?.model ?? 'unknown'}, ${gigabytes} GiB.`);
    }
    return 0;
  },
);
