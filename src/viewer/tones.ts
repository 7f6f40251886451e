/**
 * Tones of a plate for its turning point, read in the browser from a small whole picture of
 * both readings. Encoded codes become linear luminance (ITU-R BT.709 weights, as sRGB has).
 */
import { decodeSrgb } from '../imaging/colour/srgb-curve.ts';
import type { Plane } from '../imaging/plane.ts';
import { wholePicture } from './addresses.ts';
import type { StageView } from './stage-data.ts';
import { words } from './words.ts';

/** Side of the planes: enough that a tenth of a small spot is still many samples. */
const side = 512;

const table = Float32Array.from({ length: 256 }, (_, code) => decodeSrgb(code / 255));

/** Linear luminance, 0 to 1, of RGBA codes. */
export function luminanceOf(codes: Uint8ClampedArray, width: number, height: number): Plane {
  const data = new Float32Array(width * height);
  for (let i = 0; i < data.length; i++)
    data[i] =
      0.2126 * table[codes[4 * i]] +
      0.7152 * table[codes[4 * i + 1]] +
      0.0722 * table[codes[4 * i + 2]];
  return { width, height, data };
}

/** Linear luminance of a view at a small size, resampled to `width` by `height`. */
async function planeOf(view: StageView, width: number, height: number): Promise<Plane> {
  const answer = await fetch(wholePicture(view.service, view.still));
  if (!answer.ok) throw new Error(words.tilt.small);
  const bitmap = await createImageBitmap(await answer.blob(), { colorSpaceConversion: 'none' });
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error(words.faults.noPixels);
  context.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  return luminanceOf(context.getImageData(0, 0, width, height).data, width, height);
}

export interface TonePlanes {
  readonly positive: Plane;
  readonly negative: Plane;
  /** Samples per plate pixel. */
  readonly scale: number;
}

export async function tonePlanes(
  positive: StageView,
  negative: StageView,
  frame: { readonly width: number; readonly height: number },
): Promise<TonePlanes> {
  const scale = Math.min(1, side / Math.max(frame.width, frame.height));
  const width = Math.max(1, Math.round(frame.width * scale));
  const height = Math.max(1, Math.round(frame.height * scale));
  const [p, n] = await Promise.all([
    planeOf(positive, width, height),
    planeOf(negative, width, height),
  ]);
  return { positive: p, negative: n, scale };
}

/** The inner nine tenths: a mat or the table around the plate does not decide its turning point. */
export function innerRegion(plane: Pick<Plane, 'width' | 'height'>) {
  return {
    x: plane.width * 0.05,
    y: plane.height * 0.05,
    width: plane.width * 0.9,
    height: plane.height * 0.9,
  };
}
