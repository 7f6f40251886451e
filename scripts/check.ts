/** `npm run check`, `npm test`: lint, format, types, tests; the same here and in CI. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const steps: readonly (readonly [label: string, command: string, ...args: string[]])[] = [
  // Types of the content collections, which lint and the type check need.
  ['content types', 'astro', 'sync'],
  ['format', 'prettier', '--check', '--log-level', 'warn', '.'],
  ['lint', 'eslint', '--max-warnings', '0', '.'],
  ['types', 'tsc', '--noEmit', '-p', '.'],
  ['types of pages', 'astro', 'check', '--minimumSeverity', 'warning'],
  // One after the other: the browser's waits are not to be stretched by the numbers' work.
  ['unit tests', 'vitest', 'run', '--config', 'tests/vitest.config.ts', '--project', 'unit'],
  ['site tests', 'vitest', 'run', '--config', 'tests/vitest.config.ts', '--project', 'site'],
];

const failed: string[] = [];
for (const [label, command, ...args] of steps) {
  const started = performance.now();
  const { status } = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  const seconds = ((performance.now() - started) / 1000).toFixed(0);
  console.log(`${status === 0 ? 'passed' : 'FAILED'}  ${label} (${seconds} s)`);
  if (status !== 0) failed.push(label);
}
if (failed.length > 0) {
  console.log(`Not in order: ${failed.join(', ')}.`);
  process.exitCode = 1;
}
