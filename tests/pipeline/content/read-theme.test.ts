import { mkdir, mkdtemp, realpath, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readTheme } from '../../../src/pipeline/content/read-theme.ts';
import { collectionSchema } from '../../../src/records/collection.ts';

let outer: string;
let folder: string;
beforeEach(async () => {
  outer = await realpath(await mkdtemp(join(tmpdir(), 'mirrorleaf-theme-')));
  folder = join(outer, 'content');
  await mkdir(folder);
});
afterEach(async () => {
  await rm(outer, { recursive: true, force: true });
});

const about = { title: 'Plates', institution: { name: 'A museum' } };
const read = (more: object = {}) =>
  readTheme(folder, folder, collectionSchema.parse({ ...about, ...more }));
const codes = async (more: object = {}) => (await read(more)).findings.map(({ code }) => code);

describe('the looks of an exhibit', () => {
  test('are ours where nothing is said', async () => {
    expect(await read()).toEqual({
      hasStyle: false,
      logo: null,
      logoDark: null,
      contrasts: [],
      findings: [],
    });
  });

  test('are the museum’s where it gives colours, a logo and a sheet with a font', async () => {
    await mkdir(join(folder, 'fonts'));
    await writeFile(join(folder, 'fonts', 'our serif.woff2'), 'wOF2');
    await writeFile(join(folder, 'logo.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
    await writeFile(
      join(folder, 'theme.css'),
      '@font-face { font-family: Ours; src: url("fonts/our%20serif.woff2") }\n:root { --ink: #000 }\n' +
        '@media (prefers-color-scheme: dark) { :root { --ink: #fff } }',
    );
    const theme = await read({ theme: { logo: 'logo.svg' } });
    expect(theme).toMatchObject({ hasStyle: true, logo: 'logo.svg', findings: [] });
    const text = theme.contrasts.find(({ text: name, mode }) => name === 'ink' && mode === 'light');
    // Black on our paper; 21 would be on white.
    expect(text?.ratio).toBeGreaterThan(19);
  });

  test('that forget the night are an error by night only', async () => {
    await writeFile(join(folder, 'theme.css'), ':root { --ink: #000 }');
    const { findings } = await read();
    expect(findings.map(({ message }) => /by (day|night)/.exec(message)?.[1])).toEqual([
      'night',
      'night',
    ]);
  });

  test('that nobody can read are an error with the figure', async () => {
    const { findings } = await read({ theme: { light: { paper: '#ffffff', ink: '#949494' } } });
    expect(findings[0]).toMatchObject({
      code: 'low-contrast',
      level: 'error',
      message:
        'The contrast of text on its ground (--ink on --paper) is 3.03 : 1 by day; readers need 4.5 : 1.',
    });
  });
});

describe('a style sheet is left out when it', () => {
  test.each([
    ['asks another host', 'a { background: url(https://elsewhere.example/p.gif) }', 'other-host'],
    ['asks another host without its scheme', 'a { background: url(//elsewhere.example/p.gif) }', 'other-host'],
    ['names a file of the machine', 'a { background: url(file:///etc/hostname) }', 'other-host'],
    ['climbs out of the folder', 'a { background: url(../secret.png) }', 'no-file'],
    ['climbs out by escapes', 'a { background: url(%2e%2e/secret.png) }', 'no-file'],
    ['follows a link out of the folder', 'a { background: url(link.png) }', 'no-file'],
    ['names a file that is not there', 'a { background: url(gone.png) }', 'no-file'],
    ['has an address that is no address', 'a { background: url(%E0%A4%A.png) }', 'no-file'],
    ['runs something', 'a { background: url(javascript:alert(1)) }', 'other-host'],
    ['imports another', '@import "more.css";', 'style-import'],
    ['is not CSS', 'a { color: red', 'bad-style'],
  ])('%s', async (_, css, code) => {
    await writeFile(join(outer, 'secret.png'), 'secret');
    await symlink(join(outer, 'secret.png'), join(folder, 'link.png'));
    await writeFile(join(folder, 'theme.css'), css);
    const theme = await read();
    expect(theme.hasStyle).toBe(false);
    expect(theme.findings.map(({ code: found }) => found)).toEqual([code]);
    expect(theme.findings[0]).toMatchObject({ file: 'theme.css', line: 1, level: 'error' });
  });
});

describe('a logo is left out when it', () => {
  test('is absent, leads out, or could run something', async () => {
    expect(await codes({ theme: { logo: 'logo.svg' } })).toEqual(['no-file']);
    await writeFile(join(outer, 'other.svg'), '<svg/>');
    await symlink(join(outer, 'other.svg'), join(folder, 'logo.svg'));
    expect(await codes({ theme: { logo: 'logo.svg' } })).toEqual(['leads-out']);
    await writeFile(join(folder, 'mark.svg'), '<svg onload="alert(1)"/>');
    const theme = await read({ theme: { logo: 'mark.svg' } });
    expect(theme.logo).toBeNull();
    expect(theme.findings.map(({ message }) => message)).toEqual([
      'The logo mark.svg holds an event attribute.',
    ]);
  });

  test('has a name that is no plain file’s', () => {
    const parsed = collectionSchema.safeParse({ ...about, theme: { logo: '../logo.svg' } });
    expect(parsed.success).toBe(false);
  });
});
