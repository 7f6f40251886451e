/** `export.ts FOLDER SEED INDEX...`: ordinary pairs as files for align/beside.py. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { alignCase } from './cases.ts';

const [folder, seed, ...indices] = process.argv.slice(2);
for (const index of indices.map(Number)) {
  const { base, moving, truth } = alignCase(Number(seed), index, 'ordinary');
  const names = { base: `base-${index}.u16`, moving: `moving-${index}.u16` };
  writeFileSync(join(folder, names.base), base.data);
  writeFileSync(join(folder, names.moving), moving.data);
  const { width, height } = base;
  const description = JSON.stringify({ index, width, height, truth, ...names });
  writeFileSync(join(folder, `pair-${index}.json`), description);
}
