import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { CaptureFault } from '../../src/raster/capture-fault.ts';
import { openRows } from '../../src/raster/capture-rows.ts';
import { claimPipe, openPipeSlot } from '../../src/raster/pipe-slot.ts';
import { decodeThroughPipe } from '../../src/raster/piped-rows.ts';
import type { RowBatch } from '../../src/raster/row-source.ts';
import { scratchFolder } from './scratch-folder.ts';
import { platePicture } from './test-pictures.ts';

const folder = scratchFolder();
const scratch = join(folder, 'scratch');
// Rows of 6 kB: many times what a pipe holds, and several batches.
const [width, height] = [2000, 900];
const codes = platePicture(width, height);
const raw = { raw: { width, height, channels: 3 } } as const;
const eight = join(folder, 'eight.jpg');
const sixteen = join(folder, 'sixteen.png');
await sharp(
  Uint8Array.from(codes, (v) => v >> 8),
  raw,
).toFile(eight);
await sharp(codes, raw).toColourspace('rgb16').toFile(sixteen);

async function bytesOf(rows: AsyncGenerator<RowBatch>): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const { data } of rows) {
    parts.push(Buffer.from(Buffer.from(data.buffer, data.byteOffset, data.byteLength)));
  }
  return Buffer.concat(parts);
}

describe.skipIf(process.platform !== 'linux')('rows through a pipe (skipped but on Linux)', () => {
  test('hold what sharp decodes, in 8 and in 16 bits, and leave no file behind', async () => {
    const pipe = { slot: openPipeSlot(), reader: 'test', from: 0 };
    for (const path of [eight, sixteen]) {
      const source = await openRows(path, { scratch, pipe });
      // One decoder waits at the pipe; nothing but the pipe lies in the folder.
      expect(readdirSync(scratch)).toHaveLength(1);
      const own = await bytesOf(source.batches());
      await source.close();
      const picture = sharp(path);
      const theirs =
        path === eight
          ? await picture.raw().toBuffer()
          : await picture.toColourspace('rgb16').raw({ depth: 'ushort' }).toBuffer();
      expect(own.equals(theirs)).toBe(true);
      expect(readdirSync(scratch)).toEqual([]);
    }
  });

  test('come again, and from the last row', async () => {
    const source = await decodeThroughPipe(() => sharp(eight), scratch, 'test');
    const down = await bytesOf(source!.rows('down'));
    expect((await bytesOf(source!.rows('down'))).equals(down)).toBe(true);
    const line = width * 3;
    const turned = Array.from({ length: height }, (_, y) =>
      down.subarray((height - 1 - y) * line, (height - y) * line),
    );
    expect((await bytesOf(source!.rows('up'))).equals(Buffer.concat(turned))).toBe(true);
    await source!.close();
    expect(readdirSync(scratch)).toEqual([]);
  });

  test('may be left in the middle, or never read', async () => {
    for (const batches of [0, 1]) {
      const source = await decodeThroughPipe(() => sharp(eight), scratch, 'test');
      const rows = source!.rows('down');
      for (let i = 0; i < batches; i += 1) await rows.next();
      if (batches > 0) await rows.return(undefined);
      await source!.close();
      expect(readdirSync(scratch)).toEqual([]);
    }
  });

  test('break off with the sentence for a damaged file, in the head and in the pixels', async () => {
    const slot = openPipeSlot();
    const cut = join(folder, 'cut.jpg');
    writeFileSync(cut, readFileSync(eight));
    truncateSync(cut, Math.round(readFileSync(eight).length / 2));
    const source = await openRows(cut, { scratch, pipe: { slot, reader: 'test', from: 0 } });
    const read = bytesOf(source.batches());
    await expect(read).rejects.toBeInstanceOf(CaptureFault);
    await expect(read).rejects.toThrow('cut.jpg cannot be decoded to its last pixel');
    await source.close();

    const missing = decodeThroughPipe(() => sharp(join(folder, 'missing.jpg')), scratch, 'test');
    await expect(missing).rejects.toThrow('missing');
    expect(readdirSync(scratch)).toEqual([]);
    // Whoever comes next has leave again.
    expect(claimPipe(slot)).not.toBeNull();
  });
});

test.skipIf(process.platform !== 'linux')(
  'a process ends although nobody reads its pipe any more (skipped but on Linux)',
  () => {
    const module = (name: string) =>
      JSON.stringify(join(import.meta.dirname, '../../src/raster', name));
    const script = `
      const { decodeThroughPipe } = await import(${module('piped-rows.ts')});
      const { sharp } = await import(${module('libvips.ts')});
      await decodeThroughPipe(() => sharp(${JSON.stringify(eight)}), ${JSON.stringify(scratch)}, 'x');
      process.exit(3);
    `;
    const run = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
      encoding: 'utf8',
      timeout: 60_000,
    });
    expect([run.signal, run.status, run.stderr]).toEqual([null, 3, '']);
    expect(readdirSync(scratch)).toEqual([]);
  },
);

test('one thread at a time has leave to decode through a pipe', async () => {
  const slot = openPipeSlot();
  const leave = claimPipe(slot);
  expect(leave).not.toBeNull();
  expect(claimPipe(slot)).toBeNull();
  // Then the way is a scratch file.
  const source = await openRows(eight, { scratch, pipe: { slot, reader: 'test', from: 0 } });
  expect((await bytesOf(source.batches())).equals(await sharp(eight).raw().toBuffer())).toBe(true);
  await source.close();
  leave?.();
  const next = claimPipe(slot);
  expect(next).not.toBeNull();
  // Given back twice is not given back for somebody else.
  leave?.();
  expect(claimPipe(slot)).toBeNull();
});
