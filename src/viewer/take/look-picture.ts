/**
 * A region as the stage shows it, at full resolution: the same arithmetic as the last pass, by
 * the CPU twins, on the tiles themselves.
 */
import { differenceCode } from '../../imaging/difference.ts';
import { divideCode } from '../../imaging/divide.ts';
import { litPixel } from '../../imaging/relight/lamp-light.ts';
import { glossCode, reliefCode, slopeCode } from '../../imaging/surface-picture.ts';
import { tiltCode } from '../../imaging/tilt.ts';
import { rangeCode } from '../../imaging/wide-range.ts';
import type { Look } from '../look.ts';
import type { SurfaceView } from '../surface.ts';
import type { Region } from '../view-state.ts';
import { regionPicture, type RegionPicture } from './region-picture.ts';
import { regionPlanes, type RegionPlanes } from './region-planes.ts';
import { words } from '../words.ts';

/** Works out one pixel: three codes, 0 to 255, not rounded. */
type PixelOf = (pixel: number, x: number, y: number) => readonly [number, number, number];

/** Pixels of a picture of one view, and of one that is worked out pixel by pixel. */
const most = { picture: 40e6, worked: 8e6 } as const;

/**
 * @param toPlate Signed distance, view pixels, of a point of the plate from the divider.
 */
export async function lookPicture(
  look: Look,
  views: readonly SurfaceView[],
  wanted: Region,
  distance: ((x: number, y: number) => number) | null,
): Promise<RegionPicture> {
  const [first, second] = views;
  if (first.data !== undefined) return fromPlanes(look, views, wanted);
  const base = await regionPicture(
    first.service,
    wanted,
    look.kind === 'single' ? most.picture : most.worked,
  );
  if (look.kind === 'single' || second === undefined) return base;
  const a = codesOf(base.canvas);
  if (look.kind === 'range') {
    if (second.data === undefined) return base;
    const planes = await regionPlanes(second.data, base.region, base.factor);
    const { offset, step, offsetBase, offsetMerged, stops, white, clip } = look;
    const numbers = { offset, step, offsetBase, offsetMerged };
    return work(base, (i) => {
      const one = (c: number) =>
        rangeCode(a[4 * i + c], planes.codes[0][i] ?? 0, numbers, { stops, white, clip });
      return [one(0), one(1), one(2)];
    });
  }
  const b = codesOf((await regionPicture(second.service, wanted, most.worked)).canvas);
  const each = (formula: (p: number, q: number, x: number, y: number) => number): PixelOf => {
    return (i, x, y) => {
      const at = 4 * i;
      return [
        formula(a[at], b[at], x, y),
        formula(a[at + 1], b[at + 1], x, y),
        formula(a[at + 2], b[at + 2], x, y),
      ];
    };
  };
  if (look.kind === 'tilt')
    return work(
      base,
      each((p, q) => tiltCode(p, q, look.a, look.b)),
    );
  if (look.kind === 'divide') {
    const { region, factor } = base;
    const off = distance ?? (() => -1e6);
    return work(
      base,
      each((p, q, x, y) =>
        divideCode(
          p,
          q,
          off(region.x + (x + 0.5) * factor, region.y + (y + 0.5) * factor) / factor,
        ),
      ),
    );
  }
  if (look.kind === 'difference')
    return work(base, (i) => {
      const at = 4 * i;
      const grey = differenceCode(
        [a[at], a[at + 1], a[at + 2]],
        [b[at], b[at + 1], b[at + 2]],
        look.stretch,
      );
      return [grey, grey, grey];
    });
  return base;
}

async function fromPlanes(
  look: Look,
  [view]: readonly SurfaceView[],
  wanted: Region,
): Promise<RegionPicture> {
  if (view.data === undefined) throw new Error('There are no data planes here.');
  let factor = 1;
  const left = () => Math.max(0, Math.floor(wanted.x / factor) * factor);
  const top = () => Math.max(0, Math.floor(wanted.y / factor) * factor);
  while ((wanted.width / factor) * (wanted.height / factor) > most.worked) factor *= 2;
  const region = {
    x: left(),
    y: top(),
    width: Math.min(view.width, wanted.x + wanted.width) - left(),
    height: Math.min(view.height, wanted.y + wanted.height) - top(),
  };
  const planes = await regionPlanes(view.data, region, factor);
  const canvas = new OffscreenCanvas(planes.width, planes.height);
  return work({ canvas, factor, region }, pixelOfPlanes(look, planes));
}

function pixelOfPlanes(look: Look, { codes }: RegionPlanes): PixelOf {
  if (look.kind === 'lamp') {
    const light = {
      domain: look.domain,
      base: Float64Array.from(look.base),
      factors: Float64Array.from(look.factors),
    };
    const pixel = new Float64Array(codes.length);
    return (i) => {
      for (let k = 0; k < codes.length; k++) pixel[k] = codes[k][i];
      return litPixel(light, pixel);
    };
  }
  if (look.kind === 'surface') {
    const twin = { relief: reliefCode, slope: slopeCode, gloss: glossCode }[look.rendering];
    const value = (k: number, i: number) => look.offset[k] + look.step[k] * codes[k][i];
    return (i) => {
      const sample = { slopeX: value(0, i), slopeY: value(1, i), gloss: value(2, i) };
      const grey = twin(sample, look.light, look.steepest);
      return [grey, grey, grey];
    };
  }
  return (i) => [codes[0][i], codes[0][i], codes[0][i]];
}

function codesOf(canvas: OffscreenCanvas): Uint8ClampedArray {
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error(words.faults.noPixels);
  return context.getImageData(0, 0, canvas.width, canvas.height).data;
}

function work(base: RegionPicture, pixelOf: PixelOf): RegionPicture {
  const { width, height } = base.canvas;
  const image = new ImageData(width, height);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) {
      const [r, g, b] = pixelOf(i, x, y);
      // The array rounds to the nearest code.
      image.data[4 * i] = r;
      image.data[4 * i + 1] = g;
      image.data[4 * i + 2] = b;
      image.data[4 * i + 3] = 255;
    }
  base.canvas.getContext('2d')?.putImageData(image, 0, 0);
  return base;
}
