/** Rendered plates with pigment of known place, under a side lamp and in an even field. */
import type { ColourPicture } from '../../../src/imaging/hand-colouring/chroma.ts';
import { axialLight, sideLight } from '../../../src/imaging/render/lighting.ts';
import { photographSeries } from '../../../src/imaging/render/photograph.ts';
import type { Plate } from '../../../src/imaging/render/plate.ts';

export const perMillimetre = 7;

/** What the plate scatters and what it mirrors, in linear light. */
export function inBothLights(plate: Plate): readonly [ColourPicture, ColourPicture] {
  const width = Math.round((plate.width + 4) * perMillimetre);
  const height = Math.round((plate.height + 4) * perMillimetre);
  const plane = () => new Float32Array(width * height);
  const picture = () => ({ width, height, red: plane(), green: plane(), blue: plane() });
  const pictures = [picture(), picture()] as const;
  const distance = 700;
  const view = {
    ...{ width, height, pixelsPerMillimetre: perMillimetre, distance },
    ...{ shift: [0, 0] as const, turn: 0, tilt: [0, 0] as const },
  };
  const lamp = { bearing: 315, height: 45, distance: 600, size: 100, strength: 1.4 };
  const glass = { index: 1.52, thickness: 1, angle: 45 };
  const field = {
    ...{ luminance: 1, distance: 420, half: 140, slope: [0.06, -0.04] as const },
    ...{ hotSpot: 0.05, glass },
  };
  // The mean of 16 pixels has a quarter of their noise.
  const sensor = { fullWell: 45_000, readNoise: 4, noise: 0.25, depth: 16 as const };
  photographSeries(
    plate,
    { view, blur: 0.4, fallOff: true },
    [
      { lighting: sideLight(lamp, distance), sensor: { ...sensor, gain: 1.05, seed: 3 } },
      {
        lighting: axialLight(field, perMillimetre),
        sensor: { ...sensor, gain: 1 / (0.0817 * 1.15), seed: 4 },
      },
    ],
    (exposure, y, rows) => {
      const { red, green, blue } = pictures[exposure];
      [red, green, blue].forEach((channel, c) => {
        channel.set(rows[c], y * width);
      });
    },
  );
  return pictures;
}

/** Pigment over 20 x 12 mm of a plate of 69.9 x 52.4 mm, off the middle. */
export function withPigment(
  plate: Plate,
  colour: readonly [number, number, number],
  strength: number,
): Plate {
  const [width, height] = [699, 524];
  const data = new Float32Array(width * height);
  for (let y = 220; y < 340; y += 1) data.fill(1, y * width + 280, y * width + 480);
  return { ...plate, tints: [{ mask: { width, height, data }, colour, strength }] };
}
