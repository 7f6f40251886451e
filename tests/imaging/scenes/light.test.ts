/** Light that arrives, against closed forms of radiometry. */
import { expect, test } from 'vitest';
import { makeLighting, type Arrival } from '../../../src/imaging/scenes/light.ts';
import { type Scene } from '../../../src/imaging/scenes/scene.ts';
import { block } from '../../../src/imaging/scenes/solid.ts';
import { plain } from '../../../src/imaging/scenes/surfaces.ts';
import { makeTracer } from '../../../src/imaging/scenes/tracer.ts';

const empty: Scene = {
  solids: [],
  source: { kind: 'sun', towards: [0, 1, 0], radius: 1e-6, irradiance: 2 },
  sky: () => 0,
  camera: { position: [0, 0, 0], target: [0, 0, 1], tangent: 1 },
  ambient: 0,
  exposure: 1,
  haze: Infinity,
  hazeRadiance: 0,
  softness: 0,
};

/** Mean of all sixteen turns of the sequence, as the grid averages them. */
function level(scene: Scene, normal: readonly [number, number, number]): number {
  const lighting = makeLighting(scene, makeTracer(scene.solids));
  const out: Arrival = { level: 0, around: 0, vx: 0, vy: 0, vz: 0 };
  let sum = 0;
  for (let turn = 0; turn < 16; turn++) {
    lighting.arriving(0, 0, 0, ...normal, turn, 4, 4, out);
    sum += out.level + out.around;
  }
  return sum / 16;
}

test('sunlight follows the cosine: E cos(60) / pi', () => {
  const a = Math.PI / 3;
  expect(level(empty, [Math.sin(a), Math.cos(a), 0])).toBeCloseTo((2 * 0.5) / Math.PI, 5);
});

test('a small window follows the inverse square: L A / d2 / pi', () => {
  const at = (d: number): number =>
    level(
      {
        ...empty,
        source: {
          kind: 'window',
          centre: [0, d, 0],
          across: [0.01, 0, 0],
          up: [0, 0, 0.01],
          facing: [0, -1, 0],
          radiance: 50,
        },
      },
      [0, 1, 0],
    );
  // Area 4 x 0.01 x 0.01. The window is 0.02 wide at distance 1, so the formula for a point
  // is right to 2 (0.01^2 / 3) x 2 = 1.3 in ten thousand only.
  expect(at(1) / ((50 * 4e-4) / Math.PI)).toBeCloseTo(1, 3);
  expect(at(2) / at(1)).toBeCloseTo(0.25, 4);
});

test('under an even sky of radiance 1 an open surface sends back its albedo', () => {
  const scene = { ...empty, source: { ...empty.source, irradiance: 0 }, sky: () => 1 } as Scene;
  expect(level(scene, [0, 1, 0])).toBeCloseTo(1, 12);
});

test('a wall between the sun and the surface leaves nothing', () => {
  const wall = block([-5, 2, -5], [5, 2.1, 5], plain(0));
  expect(level({ ...empty, solids: [wall] }, [0, 1, 0])).toBe(0);
});
