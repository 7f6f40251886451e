import { execFileSync, spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeZip } from '../../../src/pipeline/portable/write-zip.ts';

const python = spawnSync('python3', ['--version']).status === 0;

let folder: string;
let file: string;
const html = (text: string) =>
  `<!doctype html><html lang="en"><head><title>x</title></head><body>${text}</body></html>`;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-zip-'));
  const exhibit = join(folder, 'dist');
  await mkdir(join(exhibit, 'plates', 'basin'), { recursive: true });
  await writeFile(join(exhibit, 'index.html'), html('<a href="/e/plates/basin/">Basin</a>'));
  await writeFile(join(exhibit, '404.html'), html('No such page'));
  await writeFile(join(exhibit, 'plates', 'basin', 'index.html'), html('<a href="/e/">Home</a>'));
  await writeFile(join(exhibit, 'plates', 'basin', 'bild größe.jpg'), Buffer.alloc(70_000, 7));
  await writeFile(join(exhibit, '_headers'), '/e/*');
  await writeFile(join(folder, 'secret.txt'), 'secret');
  file = join(folder, 'gallery.zip');
  await writeZip({ exhibit, base: '/e/', file, title: 'Plates that turn' });
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

describe('the archive for a gallery’s computer', () => {
  test.skipIf(!python)('is sound, and holds what it should, by Python’s zipfile', () => {
    const list = execFileSync('python3', [
      '-c',
      'import sys,zipfile,json; z=zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; print(json.dumps(z.namelist()))',
      file,
    ]);
    expect((JSON.parse(String(list)) as string[]).sort()).toEqual(
      [
        'READ-ME.txt',
        'exhibit/404.html',
        'exhibit/index.html',
        'exhibit/plates/basin/bild größe.jpg',
        'exhibit/plates/basin/index.html',
        'exhibit/served.css',
        'serve.mjs',
      ].sort(),
    );
  });

  test('has the same bytes whenever it is made', async () => {
    const again = join(folder, 'again.zip');
    await utimes(join(folder, 'dist', 'index.html'), 1, 1);
    await writeZip({
      exhibit: join(folder, 'dist'),
      base: '/e/',
      file: again,
      title: 'Plates that turn',
    });
    const digest = async (path: string) =>
      createHash('sha256')
        .update(await readFile(path))
        .digest('hex');
    expect(await digest(again)).toBe(await digest(file));
  });

  test('leaves nothing half-made where an exhibit cannot be read', async () => {
    const broken = join(folder, 'broken.zip');
    await expect(
      writeZip({ exhibit: join(folder, 'none'), base: '/e/', file: broken, title: 'x' }),
    ).rejects.toThrow(/ENOENT/);
    expect((await readdir(folder)).filter((name) => name.startsWith('broken'))).toEqual([]);
  });
});

describe.skipIf(!python)('its server', () => {
  let server: ChildProcess;
  let address: string;
  beforeAll(async () => {
    const out = join(folder, 'unpacked');
    execFileSync('python3', ['-m', 'zipfile', '-e', file, out]);
    server = spawn(process.execPath, [join(out, 'serve.mjs'), '0'], { stdio: 'pipe' });
    address = await new Promise((found, failed) => {
      server.on('exit', () => {
        failed(new Error('The server stopped.'));
      });
      server.stdout?.on('data', (text: Buffer) => {
        const said = /http:\/\/127\.0\.0\.1:\d+/.exec(String(text));
        if (said) found(said[0]);
      });
    });
  });
  afterAll(() => {
    server.removeAllListeners('exit');
    server.kill();
  });
  const get = (path: string) => fetch(`${address}${path}`, { redirect: 'manual' });

  test('gives pages, pictures and the sheet that hides the notice', async () => {
    const page = await get('/e/plates/basin/');
    expect([page.status, page.headers.get('content-type')]).toEqual([
      200,
      'text/html; charset=utf-8',
    ]);
    expect(await page.text()).toContain('href="../../index.html"');
    expect(await (await get('/e/served.css')).text()).toContain('display:none');
    const picture = await get(`/e/plates/basin/${encodeURIComponent('bild größe.jpg')}`);
    expect([picture.headers.get('content-type'), (await picture.bytes()).length]).toEqual([
      'image/jpeg',
      70_000,
    ]);
  });

  test('leads to the one address of a page', async () => {
    const leads = async (path: string) => (await get(path)).headers.get('location');
    expect(await leads('/e/plates/basin/index.html')).toBe('/e/plates/basin/');
    expect(await leads('/e/plates/basin')).toBe('/e/plates/basin/');
    expect(await leads('/')).toBe('/e/');
  });

  test.each([
    '/e/../../secret.txt',
    '/e/..%2f..%2fsecret.txt',
    '/e/%2e%2e/%2e%2e/secret.txt',
    '/e/..%5c..%5csecret.txt',
    '/e/%00',
    '/e/%E0%A4%A',
    '/e/none',
  ])('gives nothing at %s', async (path) => {
    const answer = await get(path);
    expect(answer.status === 404 || answer.headers.get('location') === '/e/').toBe(true);
    expect(await answer.text()).not.toContain('secret');
  });

  test('takes nothing', async () => {
    expect((await fetch(`${address}/e/`, { method: 'POST', body: 'x' })).status).toBe(405);
  });
});
