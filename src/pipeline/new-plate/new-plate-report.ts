/** What `npm run new` says when it is done: what it took each file for, and what is left to do. */
import { relative } from 'node:path';
import { findingText } from '../../records/finding-text.ts';
import type { NewPlate } from '../new-plate.ts';

export function newPlateReport(made: NewPlate, here: string): string {
  const path = relative(here, made.folder) || made.folder;
  const captures = made.captures.map(({ id, kind, files, setup, reading, aid }) => {
    const what =
      aid ?? `${kind}, set-up ${setup ?? 'not known'}, reading ${reading ?? 'not known'}`;
    const count = files.length === 1 ? '' : ` (${files.length} files)`;
    return `  ${id}: ${what}${count}`;
  });
  const left = made.left.map(({ name, reason }) => `  ${name}: ${reason}`);
  const todo = made.findings
    .filter(({ level }) => level !== 'note')
    .map((finding) => `  ${finding.level}: ${findingText(finding)}`);
  return [
    `Made ${path}. The photographs were copied; the folder they came from is unchanged.`,
    ...(made.madeCollection ? ['Made a first collection.md.'] : []),
    'Taken for:',
    ...captures,
    ...(left.length > 0 ? ['Not copied:', ...left] : []),
    ...(todo.length > 0 ? ['To do (a build works without it):', ...todo] : []),
  ].join('\n');
}
