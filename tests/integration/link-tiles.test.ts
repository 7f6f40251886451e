import { linkSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { linkOrCopy } from '../../src/integration/link-tiles.ts';
import { placedInfo, serviceId } from '../../src/integration/service-info.ts';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-link-'));
  await mkdir(join(folder, 'out'));
  await writeFile(join(folder, 'tile.jpg'), 'tile');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const refuse = (code: string) => () => {
  throw Object.assign(new Error(code), { code });
};

describe('linkOrCopy', () => {
  test('shares the bytes on one file system', async () => {
    const target = join(folder, 'out', 'tile.jpg');
    linkOrCopy(join(folder, 'tile.jpg'), target);
    expect((await stat(target)).ino).toBe((await stat(join(folder, 'tile.jpg'))).ino);
  });

  test.each(['EXDEV', 'EPERM', 'EMLINK', 'ENOTSUP'])('copies after %s', async (code) => {
    const target = join(folder, 'out', 'tile.jpg');
    linkOrCopy(join(folder, 'tile.jpg'), target, refuse(code));
    expect(await readFile(target, 'utf8')).toBe('tile');
    expect((await stat(target)).ino).not.toBe((await stat(join(folder, 'tile.jpg'))).ino);
  });

  test('does not hide a full disk behind a copy', () => {
    const target = join(folder, 'out', 'tile.jpg');
    expect(() => {
      linkOrCopy(join(folder, 'tile.jpg'), target, refuse('ENOSPC'));
    }).toThrow('ENOSPC');
  });

  test('fails when the target is there already', () => {
    expect(() => {
      linkOrCopy(join(folder, 'tile.jpg'), join(folder, 'tile.jpg'), linkSync);
    }).toThrow('EEXIST');
  });
});

describe('serviceId', () => {
  test('is absolute, without a slash at the end, when the address is known', () => {
    // IIIF Image API 3.0, 5.2: id without a trailing slash.
    const address = new URL('https://museum.example/plates-online/');
    expect(serviceId('quay', 'normal', { base: '/plates-online/', address })).toBe(
      'https://museum.example/plates-online/plates/quay/views/normal',
    );
  });

  test('is a path when it is not', () => {
    expect(serviceId('quay', 'normal', { base: '/', address: undefined })).toBe(
      '/plates/quay/views/normal',
    );
  });
});

test('placedInfo changes the id and nothing else', () => {
  const info = { '@context': 'http://iiif.io/api/image/3/context.json', id: 'x', width: 3 };
  expect(JSON.parse(placedInfo(JSON.stringify(info), 'https://a/b'))).toEqual({
    ...info,
    id: 'https://a/b',
  });
});
