/** Rendered plates whose pigment is known: how much is found, and how much where there is none. */
import { describe, expect, test } from 'vitest';
import {
  beyondTarnish,
  colourClasses,
} from '../../../src/imaging/hand-colouring/beyond-tarnish.ts';
import { chromaOf } from '../../../src/imaging/hand-colouring/chroma.ts';
import { colouredArea } from '../../../src/imaging/hand-colouring/coloured-area.ts';
import { drawColouring } from '../../../src/imaging/hand-colouring/draw-colouring.ts';
import type { Plate } from '../../../src/imaging/render/plate.ts';
import { standInPlate } from '../../../src/imaging/render/test-pair.ts';
import { inBothLights, perMillimetre, withPigment } from './coloured-plates.ts';

function found(plate: Plate) {
  const [scattered, mirrored] = inBothLights(plate);
  const told = beyondTarnish(scattered, mirrored, 3 * perMillimetre);
  if (!told.ok) return told;
  const square = perMillimetre ** 2;
  const area = colouredArea(told.value.classes, scattered.width, square);
  return { ok: true as const, least: area.least / square, most: area.most / square };
}

function hazed(seed: number, haze: number): Plate {
  const plate = standInPlate(seed, { width: 600 });
  return { ...plate, tarnish: { ...plate.tarnish, haze, rim: 40 } };
}

describe('hand colouring on plates whose pigment covers 240 mm² of 3660', () => {
  test.each([
    ['red', [0.52, 0.085, 0.06], 0.8],
    ['thin gold', [0.74, 0.5, 0.13], 0.3],
    ['flesh', [0.8, 0.5, 0.45], 0.4],
  ] as const)(
    '%s lies within the bounds, which are at most 100 mm² apart',
    (_, colour, strength) => {
      const area = found(
        withPigment(standInPlate(11, { width: 600, tarnish: 20 }), colour, strength),
      );
      if (!area.ok) throw new Error(area.reason);
      expect(area.least).toBeLessThan(240);
      expect(area.most).toBeGreaterThan(240);
      expect(area.most - area.least).toBeLessThan(100);
      // A reading that calls half of it tarnish, or its surroundings pigment, is outside.
      expect(area.least).toBeGreaterThan(180);
    },
  );

  test('gold on a plate hazed all over is refused, not guessed', () => {
    const area = found(withPigment(hazed(14, 20), [0.74, 0.5, 0.13], 0.62));
    expect(!area.ok && area.reason).toContain('tarnish colours most of the plate');
  });
});

describe('plates without pigment', () => {
  test.each([
    ['a clean one', standInPlate(12, { width: 600 }), 1],
    ['a tarnished rim', standInPlate(12, { width: 600, tarnish: 20 }), 60],
    // By the colour under a side lamp alone, 1046 mm² of this plate look painted.
    ['an even haze', hazed(13, 15), 90],
  ] as const)('%s has no sure colour and little that may be', (_, plate, most) => {
    const area = found(plate);
    if (!area.ok) throw new Error(area.reason);
    expect(area.least).toBe(0);
    expect(area.most).toBeLessThan(most);
  });
});

test('two captures under lamps of different whites are refused', () => {
  const [scattered, mirrored] = inBothLights(standInPlate(12, { width: 600 }));
  const blue = mirrored.blue.map((v) => v * 0.6);
  const told = beyondTarnish(scattered, { ...mirrored, blue }, 21);
  expect(!told.ok && told.reason).toContain('lamps of different whites');
});

test('chroma is the logarithm of two ratios, and light alone does not move it', () => {
  const picture = (k: number) => ({
    ...{ width: 1, height: 1 },
    ...{
      red: Float32Array.of(0.4 * k),
      green: Float32Array.of(0.2 * k),
      blue: Float32Array.of(0.1 * k),
    },
  });
  expect(chromaOf(picture(1)).red[0]).toBeCloseTo(Math.LN2, 6);
  expect(chromaOf(picture(1)).blue[0]).toBeCloseTo(-Math.LN2, 6);
  expect(chromaOf(picture(0.3)).red[0]).toBeCloseTo(Math.LN2, 6);
  // Clipped, and too dark.
  expect(chromaOf(picture(2.5)).red[0]).toBeNaN();
  expect(chromaOf(picture(0.01)).red[0]).toBeNaN();
});

test('a disc of 40 pixels across is 1257 pixels within its edge, and a speck is only possible', () => {
  const width = 60;
  const classes = new Uint8Array(width * width).fill(colourClasses.plate);
  for (let i = 0; i < classes.length; i += 1) {
    const radius = Math.hypot((i % width) - 29.5, Math.floor(i / width) - 29.5);
    if (radius < 20) classes[i] = colourClasses.sure;
  }
  const disc = colouredArea(classes, width, 10);
  // Area of a circle, and half a pixel either way along its circumference of 125.7.
  expect((disc.least + disc.most) / 2 / (Math.PI * 400)).toBeCloseTo(1, 1);
  expect((disc.most - disc.least) / (Math.PI * 40)).toBeCloseTo(1, 1);
  classes[5 * width + 5] = colourClasses.sure;
  const speckled = colouredArea(classes, width, 10);
  expect(speckled.least).toBe(disc.least);
  expect(speckled.most).toBe(disc.most + 1);
  expect(speckled.classes[5 * width + 5]).toBe(colourClasses.unsure);
});

test('what is not coloured is drawn grey, with the same light', () => {
  const picture = {
    ...{ width: 2, height: 1 },
    ...{
      red: Float32Array.of(0.5, 0.5),
      green: Float32Array.of(0.2, 0.2),
      blue: Float32Array.of(0.1, 0.1),
    },
  };
  const data = drawColouring(picture, Uint8Array.of(colourClasses.plate, colourClasses.sure));
  expect(new Set(data.subarray(0, 3)).size).toBe(1);
  // sRGB of 0.5 is 0.735357 (IEC 61966-2-1: 1.055 * 0.5^(1/2.4) - 0.055).
  expect(data[3] / 65535).toBeCloseTo(0.735357, 4);
});
