/**
 * Close-ups of one rendered plate with known truth: a stage moved by hand under a camera, a lamp
 * that stays beside the lens, so that each close-up is lit a little otherwise.
 */
import type { Homography } from '../../../src/imaging/conventions.ts';
import type { Plane16 } from '../../../src/imaging/plane.ts';
import { sideLight } from '../../../src/imaging/render/lighting.ts';
import { photograph, type Lighting } from '../../../src/imaging/render/photograph.ts';
import type { Plate } from '../../../src/imaging/render/plate.ts';
import { numbersFrom, seedOf } from '../../../src/imaging/render/seeded.ts';
import { decodeSrgb } from '../../../src/imaging/colour/srgb-curve.ts';
import { standInPlate } from '../../../src/imaging/render/test-pair.ts';
import { betweenViews, type View } from '../../../src/imaging/render/view.ts';

export interface CloseUps {
  readonly plate: Plate;
  readonly overlap: number;
  readonly base: View;
  readonly lighting: Lighting;
  readonly tiles: readonly CloseUp[];
}

export interface CloseUp {
  readonly row: number;
  readonly column: number;
  readonly width: number;
  readonly height: number;
  readonly view: View;
  /** Encoded RGB, 16 bits. */
  readonly data: Uint16Array;
  /** Takes a pixel of the close-up to the base, without remainder. */
  readonly toBase: Homography;
}

export interface CloseUpOptions {
  readonly width?: number;
  readonly height?: number;
  readonly rows?: number;
  readonly columns?: number;
  /** Exposure of each tile, by index; 1 where nothing is said. */
  readonly exposures?: Readonly<Record<number, number>>;
  readonly noise?: number;
  /**
   * False for a plate without polishing lines and scratches: these throw the lamp back otherwise
   * in each close-up, which is no fault of a seam.
   */
  readonly glints?: boolean;
}

const distance = 700;
const gain = 1.05;
const scene = 1400;

export function renderCloseUps(seed: number, options: CloseUpOptions = {}): CloseUps {
  const { width = 640, height = 480, rows = 3, columns = 3 } = options;
  const made = standInPlate(seed, { width: scene });
  const plate = options.glints === false ? { ...made, polish: 0, scratches: [] } : made;
  const overlap = 0.3;
  const step = 1 - overlap;
  const across = (plate.width + 4) / (1 + (columns - 1) * step);
  const pixelsPerMillimetre = width / across;
  const down = height / pixelsPerMillimetre;
  const base: View = {
    width: Math.round((plate.width + 4) * (pixelsPerMillimetre / 2)),
    height: Math.round((plate.height + 4) * (pixelsPerMillimetre / 2)),
    pixelsPerMillimetre: pixelsPerMillimetre / 2,
    distance,
    shift: [0, 0],
    turn: 0,
    tilt: [0, 0],
  };
  const lighting = sideLight(
    { bearing: 315, height: 45, distance: 600, size: 100, strength: 1.4 },
    distance,
  );
  const next = numbersFrom(seedOf('stage', seed));
  const about = (most: number) => (2 * next() - 1) * most;
  const tiles = Array.from({ length: rows * columns }, (_, i): CloseUp => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const view: View = {
      ...base,
      width,
      height,
      pixelsPerMillimetre: pixelsPerMillimetre * (1 + about(0.0006)),
      shift: [
        (column - (columns - 1) / 2) * step * across + about(0.3),
        (row - (rows - 1) / 2) * step * down + about(0.3),
      ],
      turn: about(0.1),
      tilt: [0.05, -0.04],
    };
    const data = photographed(plate, view, lighting, {
      gain: gain * (options.exposures?.[i] ?? 1),
      noise: options.noise ?? 1,
      seed: seed + i,
    });
    return { row, column, width, height, view, data, toBase: betweenViews(view, base) };
  });
  return { plate, overlap, base, lighting, tiles };
}

/** One picture, encoded RGB of 16 bits. */
export function photographed(
  plate: Plate,
  view: View,
  lighting: Lighting,
  sensor: { readonly gain?: number; readonly noise: number; readonly seed: number },
): Uint16Array {
  const full = { gain, fullWell: 45_000, readNoise: 4, depth: 16 as const, ...sensor };
  const standing = { view, blur: 0.6, fallOff: true };
  const [data] = photograph(plate, standing, [{ lighting, sensor: full }]);
  return data as Uint16Array;
}

const linear = Float64Array.from({ length: 65536 }, (_, i) => decodeSrgb(i / 65535) * 65535);

/** Linear luminance of encoded RGB. */
export function luminanceOf(data: Uint16Array, width: number, height: number): Plane16 {
  const out = new Uint16Array(width * height);
  for (let i = 0; i < out.length; i += 1) {
    const [r, g, b] = [linear[data[3 * i]], linear[data[3 * i + 1]], linear[data[3 * i + 2]]];
    out[i] = Math.round(0.2126 * r + 0.7152 * g + 0.0722 * b);
  }
  return { width, height, data: out };
}
