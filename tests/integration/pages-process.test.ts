import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeSmallContent } from '../pipeline/small-content.ts';

const script = join(import.meta.dirname, '../../src/integration/pages-process.ts');
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-pages-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const begin = () =>
  spawn(process.execPath, [script], { stdio: ['ignore', 'ignore', 'pipe', 'ipc'] });

test('what stops the pages is said in sentences, without a stack', async () => {
  const content = join(folder, 'content');
  await writeSmallContent(content, { width: 530, height: 430 });
  const child = begin();
  child.send({
    MIRRORLEAF_CONTENT: content,
    MIRRORLEAF_CACHE: join(folder, 'cache'),
    MIRRORLEAF_OUT: join(folder, 'out'),
    ASTRO_TELEMETRY_DISABLED: '1',
  });
  const said = await text(child.stderr!);
  const [code] = (await once(child, 'close')) as [number];
  expect(code).toBe(1);
  // No stage has run.
  expect(said).toMatch(/has no result/);
  expect(said).not.toMatch(/^\s+at |Error/m);
});

test('it ends with the process that began it', async () => {
  const child = begin();
  child.disconnect();
  const [code] = (await once(child, 'exit')) as [number];
  expect(code).toBe(1);
});
