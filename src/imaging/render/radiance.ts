/**
 * What a sensor without noise and without a limit would have taken: the linear light that a
 * photograph is checked against.
 */
import { type Lighting, photographSeries, type Standing } from './photograph.ts';
import { type Plate } from './plate.ts';

/** A power of two, so that scaling is exact; no luminance here comes near it. */
const room = 65536;

/**
 * Luminance at the sensor, behind glass, lens blur and fall-off, before exposure: times a frame's
 * gain it is the signal, 1 the clip level.
 *
 * @returns Linear sRGB primaries, three channels interleaved, rows from the top.
 */
export function radianceOf(plate: Plate, standing: Standing, lighting: Lighting): Float32Array {
  const { width, height } = standing.view;
  const out = new Float32Array(width * height * 3);
  const sensor = {
    gain: 1 / room,
    fullWell: 1,
    readNoise: 0,
    noise: 0,
    depth: 16,
    seed: 0,
  } as const;
  photographSeries(plate, standing, [{ lighting, sensor }], (_, y, row) => {
    for (let x = 0; x < width; x += 1) {
      for (let c = 0; c < 3; c += 1) out[(y * width + x) * 3 + c] = row[c][x] * room;
    }
  });
  return out;
}
