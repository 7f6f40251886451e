import { describe, expect, test } from 'vitest';
import { emptyChannels } from '../../../src/imaging/render/blur.ts';
import { addLamp, type Lamp, smithMask } from '../../../src/imaging/render/lamp.ts';
import { emptyRow } from '../../../src/imaging/render/plate-row.ts';
import { emptyReflectances } from '../../../src/imaging/render/reflectance.ts';

/** One pixel at a place, all diffuse or all mirror. */
function patch(kind: 'diffuse' | 'mirror', x = 0, y = 0) {
  const line = emptyRow(1);
  const surface = emptyReflectances(1);
  line.x[0] = x;
  line.y[0] = y;
  for (let c = 0; c < 3; c += 1) surface[kind][c][0] = 1;
  return { line, surface };
}

function light(place: ReturnType<typeof patch>, lamp: Lamp): number {
  const out = emptyChannels(1);
  addLamp(out, place.line, place.surface, lamp, 700);
  return out[0][0];
}

const lamp: Lamp = { bearing: 315, height: 45, distance: 600, size: 60, strength: 1 };

describe('a white diffuse patch', () => {
  test('follows the cosine law at the centre', () => {
    const white = patch('diffuse');
    for (const height of [10, 30, 45, 60, 90]) {
      const wanted = Math.sin((height * Math.PI) / 180);
      expect(light(white, { ...lamp, height })).toBeCloseTo(wanted, 12);
    }
  });

  test('follows cosine and inverse-square laws away from the centre', () => {
    // Lamp at bearing 90 (right), 45 degrees, 600 mm: at (424.264, 0, 424.264).
    const side = { ...lamp, bearing: 90 };
    for (const [x, y] of [
      [40, 0],
      [-40, 0],
      [0, 35],
      [25, -30],
    ]) {
      const dx = 424.26406871 - x;
      const r = Math.hypot(dx, y, 424.26406871);
      const wanted = (424.26406871 / r) * (600 / r) ** 2;
      expect(light(patch('diffuse', x, y), side)).toBeCloseTo(wanted, 9);
    }
  });

  test('is brighter towards the lamp: bearing 0 is the top edge', () => {
    const above = { ...lamp, bearing: 0 };
    expect(light(patch('diffuse', 0, -30), above)).toBeGreaterThan(
      light(patch('diffuse', 0, 30), above),
    );
  });
});

describe('the mirror family', () => {
  /** Share of light from one direction to the lens, added up over all directions it can come from. */
  function albedo(gloss: number, scratch: number): number {
    const place = patch('mirror');
    place.line.gloss[0] = gloss;
    place.line.scratch[0] = scratch;
    place.line.alongX[0] = 1;
    const far = { distance: 1e6, size: 4e5, strength: 1 };
    let sum = 0;
    const steps = 180;
    for (let i = 0; i < steps; i += 1) {
      const zenith = ((i + 0.5) / steps) * (Math.PI / 2);
      for (let j = 0; j < 240; j += 1) {
        const value = light(place, {
          ...far,
          bearing: j * 1.5,
          height: 90 - (zenith * 180) / Math.PI,
        });
        sum += value * Math.sin(zenith);
      }
    }
    const solid = (Math.PI / 2 / steps) * ((2 * Math.PI) / 240);
    return (sum * solid) / Math.PI;
  }

  test.each([
    [0, 0],
    [1, 0],
    [0.3, 0.2],
    [0, 1],
  ])('gives back no more than it got: gloss %f, scratch %f', (gloss, scratch) => {
    const share = albedo(gloss, scratch);
    expect(share).toBeLessThan(1.002);
    // Wide lobes lose what would go below the plate; narrow ones must not lose light.
    expect(share).toBeGreaterThan(scratch > 0.5 ? 0.7 : 0.95);
  });

  test('a scratch is bright under a lamp across it and dark under one along it', () => {
    const place = patch('mirror');
    place.line.scratch[0] = 1;
    place.line.alongX[0] = 1;
    const across = light(place, { ...lamp, bearing: 0 });
    const along = light(place, { ...lamp, bearing: 90 });
    expect(across).toBeGreaterThan(100 * along);
  });

  test('masking is none head-on and all at grazing', () => {
    expect(smithMask(10, 0.1)).toBe(1);
    expect(smithMask(0.001, 0.3)).toBeLessThan(0.02);
  });
});
