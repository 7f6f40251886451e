/**
 * One measured run of `../mosaic.ts`: `giga.ts write FOLDER` makes the close-ups of a mosaic of
 * 900 megapixels, `giga.ts join FOLDER` joins and tiles them in a fresh process and says how much
 * anonymous memory that took at most.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { assembleMosaic } from '../../../src/imaging/mosaic/assemble.ts';
import { startSurvey } from '../../../src/imaging/mosaic/survey.ts';
import { loadLuminance } from '../../../src/raster/load-plane.ts';
import { tilePicture } from '../../../src/raster/tile-picture.ts';

export interface GigaRun {
  /** Largest anonymous resident size, 10^6 bytes. */
  readonly anonymousMegabytes: number;
  readonly megapixels: number;
  readonly cpuSeconds: number;
}

const side = Number(process.env['GIGA_WIDTH'] ?? 8400);
const tile = { width: side, height: Math.round(side * 0.75) };
const grid = { columns: 6, rows: 5 };
const overlap = 0.3;
const names = Array.from({ length: grid.columns * grid.rows }, (_, i) => ({
  file: `close-up-${i}.tif`,
  row: Math.floor(i / grid.columns),
  column: i % grid.columns,
  ...tile,
}));

/** Two textures of coprime sides: together they repeat nowhere within a mosaic. */
function texture(seed: number, period: number): Uint8Array {
  let state = seed;
  const next = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
  const raw = Float32Array.from({ length: period * period }, next);
  const out = new Uint8Array(period * period);
  for (let y = 0; y < period; y += 1) {
    for (let x = 0; x < period; x += 1) {
      let sum = 0;
      for (let v = -1; v <= 1; v += 1) {
        for (let u = -1; u <= 1; u += 1) {
          sum += raw[((y + v + period) % period) * period + ((x + u + period) % period)];
        }
      }
      out[y * period + x] = (sum / 9) * 255;
    }
  }
  return out;
}

/** A strip TIFF of 8-bit RGB, row by row. */
async function writeTile(path: string, left: number, top: number, a: Uint8Array, b: Uint8Array) {
  const { width, height } = tile;
  const head = Buffer.alloc(8 + 2 + 10 * 12 + 4 + 6);
  head.write('II*\0\x08\0\0\0', 0, 'latin1');
  head.writeUInt16LE(10, 8);
  const bits = 8 + 2 + 120 + 4;
  const entries: [number, number, number, number][] = [
    [256, 4, 1, width],
    [257, 4, 1, height],
    [258, 3, 3, bits],
    [259, 3, 1, 1],
    [262, 3, 1, 2],
    [273, 4, 1, head.length],
    [277, 3, 1, 3],
    [278, 4, 1, height],
    [279, 4, 1, width * height * 3],
    [284, 3, 1, 1],
  ];
  entries.forEach(([tag, type, count, value], i) => {
    head.writeUInt16LE(tag, 10 + 12 * i);
    head.writeUInt16LE(type, 12 + 12 * i);
    head.writeUInt32LE(count, 14 + 12 * i);
    head.writeUInt32LE(value, 18 + 12 * i);
  });
  for (let c = 0; c < 3; c += 1) head.writeUInt16LE(8, bits + 2 * c);
  const file = await open(path, 'w');
  try {
    await file.write(head);
    const rows = 64;
    const band = Buffer.alloc(rows * width * 3);
    for (let y0 = 0; y0 < height; y0 += rows) {
      const count = Math.min(rows, height - y0);
      for (let y = 0, o = 0; y < count; y += 1) {
        const gy = top + y0 + y;
        const rowA = (gy % 509) * 509;
        const rowB = ((gy >> 3) % 499) * 499;
        for (let x = 0; x < width; x += 1, o += 3) {
          const gx = left + x;
          const v = 40 + ((a[rowA + (gx % 509)] + 2 * b[rowB + ((gx >> 3) % 499)]) >> 2);
          band[o] = v;
          band[o + 1] = v - 4;
          band[o + 2] = v - 12;
        }
      }
      await file.write(band, 0, count * width * 3);
    }
  } finally {
    await file.close();
  }
}

async function write(folder: string): Promise<void> {
  const [a, b] = [texture(1, 509), texture(2, 499)];
  for (const { file, row, column } of names) {
    // A stage is off by some pixels each time.
    const left = Math.round(column * tile.width * (1 - overlap)) + ((row * 7 + column * 3) % 11);
    const top = Math.round(row * tile.height * (1 - overlap)) + ((row * 5 + column * 13) % 9);
    await writeTile(join(folder, file), left, top, a, b);
  }
}

async function joinAll(folder: string): Promise<GigaRun> {
  let largest = 0;
  const look = setInterval(() => {
    const found = /RssAnon:\s+(\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8'));
    largest = Math.max(largest, (Number(found?.[1] ?? 0) * 1024) / 1e6);
  }, 50);
  const options = { scratch: folder };
  const surveyor = startSurvey(names, overlap);
  for (const [i, { file }] of names.entries()) {
    surveyor.add(i, await loadLuminance(join(folder, file), options));
  }
  // The base is not measured here: it is as large as any capture and held once.
  const plane = { width: 320, height: 320, data: new Uint16Array(320 * 320) };
  const made = assembleMosaic(names, surveyor.finish(), { plane, pixelsPerMillimetre: null });
  if (made?.members.length !== names.length) throw new Error('Not every close-up was joined.');
  const path = join(folder, 'mosaic.json');
  writeFileSync(path, JSON.stringify({ plan: made.plan }));
  const job = { path, composedFrom: folder, scratch: folder, folder: join(folder, 'tiles') };
  await tilePicture({ ...job, id: 'bench', tile: 512, quality: 85 });
  clearInterval(look);
  const { user, system } = process.cpuUsage();
  return {
    anonymousMegabytes: largest,
    megapixels: (made.plan.width * made.plan.height) / 1e6,
    cpuSeconds: (user + system) / 1e6,
  };
}

const [mode, folder] = process.argv.slice(2);
if (mode === 'write') await write(folder);
else process.stdout.write(JSON.stringify(await joinAll(folder)));
