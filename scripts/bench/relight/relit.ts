/** One rendered plate through the whole way: fit, codes, WebP tiles, and back for held-out lamps. */
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { chooseFit } from '../../../src/imaging/relight/choose-fit.ts';
import { lampLight, litPixel } from '../../../src/imaging/relight/lamp-light.ts';
import { lampResponse } from '../../../src/imaging/relight/lamp-response.ts';
import { planeCoding } from '../../../src/imaging/relight/plane-coding.ts';
import { frameProjector } from '../../../src/imaging/relight/project-frames.ts';
import { lampTiles } from '../../../src/pipeline/combine/lights/lamp-planes.ts';
import { writeLayer } from '../../../src/raster/layer-pyramid.ts';
import {
  heldOut,
  litSet,
  type Surface,
  trainingPlaces,
} from '../../../tests/fixtures/relight/lit-plates.ts';
import {
  heldOutDecibels,
  nearestFrameDecibels,
  sampleOf,
} from '../../../tests/fixtures/relight/held-out.ts';

export interface Relit {
  readonly decibels: number;
  readonly nearest: number;
  /** Of the tiles at full size. */
  readonly bytesPerPixel: number;
  readonly planes: number;
  readonly words: string;
}

const { tile } = lampTiles;

export async function relit(surface: Surface, lamps: number, seed = 5): Promise<Relit> {
  const training = litSet(surface, trainingPlaces(lamps), { seed });
  const test = litSet(surface, heldOut, { seed });
  const { width, height, directions } = training;
  const sample = sampleOf(training, 4);
  const fit = chooseFit(sample, directions);
  if (!fit.ok) throw new Error(fit.reason);
  const { planes, components, weights } = fit.value;
  const coding = planeCoding(sample, components, planes);
  const codes = new Uint8Array(planes * width * height);
  frameProjector(components, coding)(training.frames, width * height, codes);
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-relit-'));
  try {
    const back = await throughTiles(folder, codes, width, height, planes);
    const layer = {
      ...{ planes, ...coding, domain: components.domain, terms: weights.kind },
      lamps: directions.map((direction) => ({ direction })),
      response: lampResponse(fit.value),
    };
    const pixel = new Uint8Array(planes);
    const decibels = heldOutDecibels(test, (i) => {
      const light = lampLight(layer, test.directions[i]);
      const frame = new Float32Array(width * height * 3);
      for (let p = 0; p < width * height; p += 1) {
        for (let k = 0; k < planes; k += 1) pixel[k] = back.codes[k * width * height + p];
        frame.set(litPixel(light, pixel), p * 3);
      }
      return frame;
    });
    const nearest = nearestFrameDecibels(training, test);
    const { leftOutDecibels, nearestDecibels, free } = fit.value;
    const words = `${surface} ${lamps}: ${components.domain} ${weights.kind} K=${planes} held out ${decibels.toFixed(2)} nearest ${nearest.toFixed(2)} B/px ${(back.bytes / width / height).toFixed(2)} LOO ${leftOutDecibels.toFixed(2)} v ${nearestDecibels.toFixed(2)} free ${free} kept ${fit.value.keptDecibels.toFixed(1)}`;
    return { decibels, nearest, bytesPerPixel: back.bytes / width / height, planes, words };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The codes after they have been tiles. */
async function throughTiles(
  folder: string,
  codes: Uint8Array,
  width: number,
  height: number,
  planes: number,
): Promise<{ codes: Uint8Array; bytes: number }> {
  const row = new Uint8Array(planes * width);
  await writeLayer(
    {
      ...{ width, height, planes },
      *rows() {
        for (let y = 0; y < height; y += 1) {
          for (let k = 0; k < planes; k += 1) {
            const from = (k * height + y) * width;
            row.set(codes.subarray(from, from + width), k * width);
          }
          yield row;
        }
      },
    },
    { folder, ...lampTiles, own: {} },
  );
  const back = new Uint8Array(codes.length);
  let bytes = 0;
  for (const name of await readdir(join(folder, '0'))) {
    const path = join(folder, '0', name);
    bytes += (await stat(path)).size;
    const [column, across] = name.split('.')[0].split('-').map(Number);
    const { data, info } = await sharp(path)
      .toColourspace('b-w')
      .raw()
      .toBuffer({ resolveWithObject: true });
    const rows = info.height / planes;
    for (let k = 0; k < planes; k += 1) {
      for (let y = 0; y < rows; y += 1) {
        const from = (k * rows + y) * info.width * info.channels;
        const to = (k * height + across * tile + y) * width + column * tile;
        for (let x = 0; x < info.width; x += 1) back[to + x] = data[from + x * info.channels];
      }
    }
  }
  return { codes: back, bytes };
}
