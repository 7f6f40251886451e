/** The technique pages name findings by their codes: codes that the checks really give. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const given = new Set(
  globSync('src/{pipeline,records}/**/*.ts', { cwd: root }).flatMap((file) =>
    [...readFileSync(join(root, file), 'utf8').matchAll(/code: [^,\n]*/g)].flatMap(([words]) =>
      [...words.matchAll(/'([a-z0-9-]+)'/g)].map(([, code]) => code),
    ),
  ),
);
/** The originals: a translation need not have a text of its own. */
const pages = globSync('content/techniques/*.md', { cwd: root }).filter(
  (path) => !/\.[^.]+\.md$/.test(path),
);

test.each(pages)('%s names only findings that there are, and sources', (page) => {
  const text = readFileSync(join(root, page), 'utf8');
  const [, said = ''] = /## What the checks say\n([\s\S]*?)\n## /.exec(text) ?? [];
  const codes = [...said.matchAll(/^- `([a-z0-9-]+)`:/gm)].map(([, code]) => code);
  expect(codes.length).toBeGreaterThan(2);
  expect(codes.filter((code) => !given.has(code))).toEqual([]);
  for (const part of ['What it shows', 'What goes wrong', 'Care', 'Sources']) {
    expect(text).toContain(`## ${part}\n`);
  }
});
