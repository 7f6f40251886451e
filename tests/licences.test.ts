/** What the project stands on: under which licences, and that the lock says which bytes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { handedOn, licenceText } from '../src/integration/write-licences.ts';

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
}
const root = join(import.meta.dirname, '..');
const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
  packages: Record<string, Locked>;
};
const packages = Object.entries(lock.packages).filter(([path]) => path !== '');

/**
 * Names of the SPDX list. LGPL is libvips, a library that sharp loads and that anyone may
 * exchange; MPL asks for the source of changed files alone, and none is changed.
 */
const allowed = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'ISC',
  'LGPL-3.0-or-later',
  'MIT',
  'MPL-2.0',
  'OFL-1.1',
  'Python-2.0',
]);

describe('the packages that run', () => {
  test('are under licences that were looked at', () => {
    const running = packages.filter(([, { dev }]) => !dev);
    const others = running.filter(
      ([, { license }]) => !license?.split(' AND ').every((one) => allowed.has(one)),
    );
    expect(running.length).toBeGreaterThan(100);
    expect(others).toEqual([]);
  });

  test('are named in package.json with their one version, the one of the lock', () => {
    const { dependencies, devDependencies } = JSON.parse(
      readFileSync(join(root, 'package.json'), 'utf8'),
    ) as Record<string, Record<string, string>>;
    for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies })) {
      expect(lock.packages[`node_modules/${name}`].version, name).toBe(version);
    }
  });

  test('run a program of their own on installing in three cases, which were looked at', () => {
    const running = packages.filter(([, one]) => one.hasInstallScript).map(([path]) => path);
    expect(running.sort()).toEqual(
      ['esbuild', 'exifreader', 'node'].map((name) => `node_modules/${name}`),
    );
  });

  test('are locked by the digest of their bytes', () => {
    expect(packages.filter(([, { integrity }]) => !integrity?.startsWith('sha512-'))).toEqual([]);
  });
});

test('an exhibit carries the licences of what is in it', async () => {
  const text = await licenceText();
  for (const name of handedOn) expect(text).toContain(name);
  expect(text.match(/SIL OPEN FONT LICENSE Version 1\.1/g)?.length).toBeGreaterThanOrEqual(2);
  expect(text).toContain('Redistributions in binary form must reproduce');
});
