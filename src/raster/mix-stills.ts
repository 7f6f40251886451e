/**
 * Stills of a plate on its way from positive to negative: both readings added in linear light,
 * `V = a P + b N` over a + b, by the formula of the viewer's shader, and written as small WebP
 * files. From finished pictures of the exhibit, so nothing of a capture's metadata comes along.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { decodeSrgb } from '../imaging/colour/srgb-curve.ts';
import type { Plane } from '../imaging/plane.ts';
import { tiltCode } from '../imaging/tilt.ts';
import { sharp } from './libvips.ts';

export interface MixJob {
  /** Whole pictures of both readings in one frame, on the disk. */
  readonly positive: string;
  readonly negative: string;
  /** Longest side of the stills, pixels. */
  readonly side: number;
  /** Luminance that the mirror reflects in each still; the lamp's strength is 1. */
  readonly mixes: readonly number[];
  /** `0.webp`, `1.webp` … are written here. */
  readonly folder: string;
  /** XMP packet of each still, in the order of the mixes. */
  readonly packets: readonly string[];
}

export interface MixedStills {
  readonly width: number;
  readonly height: number;
  /** Linear luminance of both pictures at that size, 0 to 1. */
  readonly positive: Plane;
  readonly negative: Plane;
}

/** WebP quality: the stills are a stand-in, some 40 kB each. */
const quality = 78;

interface Codes {
  /** Encoded sRGB, three to a pixel. */
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

export async function mixStills(job: MixJob): Promise<MixedStills> {
  const positive = await codesOf(job.positive, { side: job.side });
  const { width, height } = positive;
  const negative = await codesOf(job.negative, { width, height });
  for (const [n, b] of job.mixes.entries()) {
    const mixed = sharp(mixCodes(positive.data, negative.data, b), {
      raw: { width, height, channels: 3 },
    });
    const still = await mixed.withXmp(job.packets[n]).webp({ quality }).toBuffer();
    await writeFile(join(job.folder, `${n}.webp`), still);
  }
  return { width, height, positive: luminance(positive), negative: luminance(negative) };
}

/** One code for each channel of each pixel, as the viewer's Tilt shows it. */
export function mixCodes(positive: Uint8Array, negative: Uint8Array, b: number): Uint8Array {
  // Of the 65,536 pairs of codes a picture has far fewer than it has samples.
  const known = new Int16Array(65536).fill(-1);
  return Uint8Array.from(positive, (p, i) => {
    const pair = (p << 8) | negative[i];
    if (known[pair] < 0) known[pair] = Math.round(tiltCode(p, negative[i], 1, b));
    return known[pair];
  });
}

/** The pixels of a picture, shrunk in linear light where it is larger. */
async function codesOf(
  path: string,
  size: { readonly side: number } | { readonly width: number; readonly height: number },
): Promise<Codes> {
  const box =
    'side' in size
      ? { width: size.side, height: size.side, fit: 'inside' as const, withoutEnlargement: true }
      : { ...size, fit: 'fill' as const };
  const { data, info } = await sharp(path)
    .removeAlpha()
    .pipelineColourspace('scrgb')
    .resize(box)
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

const linear = Float32Array.from({ length: 256 }, (_, code) => decodeSrgb(code / 255));

/** ITU-R BT.709 weights, as sRGB has. */
function luminance({ data, width, height }: Codes): Plane {
  const light = Float32Array.from(
    { length: width * height },
    (_, i) =>
      0.2126 * linear[data[3 * i]] +
      0.7152 * linear[data[3 * i + 1]] +
      0.0722 * linear[data[3 * i + 2]],
  );
  return { width, height, data: light };
}
