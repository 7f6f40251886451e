/**
 * A bracket of one plate with known truth, small and quick: the exposures as a camera's codes,
 * and the light without noise, clipping or rounding.
 */
import { sideLight } from './lighting.ts';
import { photographSeries, type Take } from './photograph.ts';
import { encodeSrgb } from '../colour/srgb-curve.ts';
import { standInPlate } from './test-pair.ts';
import type { View } from './view.ts';

export interface BracketOptions {
  readonly width: number;
  readonly height: number;
  /** True exposures; the first of them gives a full highlight `signal`. */
  readonly seconds: readonly number[];
  /** Signal of a full highlight in the first frame, 1 clips. */
  readonly signal?: number;
  readonly fullWell?: number;
  readonly readNoise?: number;
  readonly depth?: 8 | 16;
  /** Linear signal to code, both 0 to 1; the sRGB curve where nothing is said. */
  readonly curve?: (linear: number) => number;
}

export interface RenderedBracket {
  /** Codes of each frame, three channels interleaved. */
  readonly frames: readonly (Uint8Array | Uint16Array)[];
  /** Signal per second, unbounded, three channels interleaved. */
  readonly truth: Float32Array;
}

/** Same seed and options, same samples. */
export function renderBracket(seed: number, options: BracketOptions): RenderedBracket {
  const { width, height, seconds, signal = 0.7, depth = 16, curve = encodeSrgb } = options;
  const plate = standInPlate(seed);
  const scale = Math.min(width / (plate.width + 5), height / (plate.height + 5));
  const view: View = {
    ...{ width, height, pixelsPerMillimetre: scale, distance: 700 },
    ...{ shift: [0, 0], turn: 0, tilt: [0, 0] },
  };
  const lamp = { bearing: 315, height: 45, distance: 600, size: 100, strength: 1.4 };
  const lighting = sideLight(lamp, view.distance);
  const sensor = {
    ...{ fullWell: options.fullWell ?? 45_000, readNoise: options.readNoise ?? 4, depth },
  };
  const takes: Take[] = [0, ...seconds].map((t, k) => ({
    lighting,
    sensor: {
      ...sensor,
      // The truth is taken a thousandth as bright as the first frame, so that nothing clips.
      gain: k === 0 ? signal / 1000 : (signal * t) / seconds[0],
      noise: k === 0 ? 0 : 1,
      seed: seed * 100 + k,
    },
  }));
  const samples = width * height * 3;
  const truth = new Float32Array(samples);
  const top = 2 ** depth - 1;
  const frames = seconds.map(() =>
    depth === 16 ? new Uint16Array(samples) : new Uint8Array(samples),
  );
  photographSeries(plate, { view, blur: 0.6, fallOff: true }, takes, (take, y, row) => {
    for (let x = 0, i = y * width * 3; x < width; x += 1, i += 3) {
      for (let c = 0; c < 3; c += 1) {
        const light = row[c][x];
        if (take === 0) truth[i + c] = (light * 1000) / seconds[0];
        else frames[take - 1][i + c] = Math.round(top * curve(light));
      }
    }
  });
  return { frames, truth };
}
