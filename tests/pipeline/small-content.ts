/**
 * A small content folder with real captures, for tests of the stages: a plate with a positive
 * and a negative of the same random grain, and one with a positive alone. Seeded: the same bytes
 * each time. `size` makes them smaller where a build is made hundreds of times.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { writePicture } from '../../src/raster/write-picture.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}
const usual: Size = { width: 640, height: 520 };

/** A 32-bit linear congruential generator (Numerical Recipes, "ranqd1"); integers only. */
function grain(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Encoded grey picture of soft blobs and grain, 0 to 255. */
export function blobs(seed: number, { width, height } = usual): Uint8Array {
  const next = grain(seed);
  const large = width / usual.width;
  const centres = Array.from({ length: 60 }, () => ({
    x: next() * width,
    y: next() * height,
    radius: (12 + next() * 60) * large,
    tone: next() < 0.5 ? -1 : 1,
  }));
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let tone = 0;
      for (const c of centres) {
        const d2 = (x - c.x) ** 2 + (y - c.y) ** 2;
        if (d2 < c.radius ** 2) tone += c.tone * (1 - d2 / c.radius ** 2);
      }
      const value = 118 + 55 * Math.max(-1.5, Math.min(1.5, tone)) + 10 * (next() - 0.5);
      data[y * width + x] = Math.round(value);
    }
  }
  return data;
}

const negative = (data: Uint8Array): Uint8Array => data.map((code) => 235 - code);

export async function writeCapture(path: string, data: Uint8Array, size = usual): Promise<void> {
  await writePicture(path, {
    ...size,
    channels: 1,
    depth: 8,
    data,
    profile: 'srgb',
    format: path.endsWith('.png') ? 'png' : 'tiff',
  });
}

export async function writeSmallContent(folder: string, size = usual): Promise<void> {
  await mkdir(folder, { recursive: true });
  await writeFile(
    join(folder, 'collection.md'),
    '---\ntitle: Two plates\ninstitution:\n  name: A small museum\nlanguages: [en]\n---\n\nTwo.\n',
  );
  for (const [slug, seed] of [
    ['first', 1],
    ['second', 2],
  ] as const) {
    const plate = join(folder, 'plates', slug);
    await mkdir(join(plate, 'captures'), { recursive: true });
    await writeFile(
      join(plate, 'plate.md'),
      `---\ntitle: The ${slug} plate\nprocess: daguerreotype\ndate: '1850'\nsize: [70, 83]\n` +
        'description:\n  positive: Light blobs on dark.\n  negative: Dark blobs on light.\n' +
        'rights: http://rightsstatements.org/vocab/NKC/1.0/\n---\n\nText.\n',
    );
    await writeFile(
      join(plate, 'sitting.yaml'),
      `date: 2026-05-04\nbase: normal\nscale: { pixelsPerMillimetre: ${(12 * size.width) / usual.width} }\ncaptures:\n` +
        '  - { id: normal, file: normal.tif, setup: normal, reading: positive }\n' +
        (slug === 'first'
          ? '  - { id: axial, file: axial.png, setup: axial, reading: negative }\n'
          : ''),
    );
    const data = blobs(seed, size);
    await writeCapture(join(plate, 'captures', 'normal.tif'), data, size);
    if (slug === 'first') {
      await writeCapture(join(plate, 'captures', 'axial.png'), negative(data), size);
    }
  }
}
