import { expect, test } from 'vitest';
import { lightRow, plateRows } from '../../../src/imaging/render/photograph.ts';
import { emptyChannels } from '../../../src/imaging/render/blur.ts';
import { axialLight, sideLight } from '../../../src/imaging/render/lighting.ts';
import { emptyRow } from '../../../src/imaging/render/plate-row.ts';
import { emptyReflectances, reflectRow } from '../../../src/imaging/render/reflectance.ts';
import { grownFilmColours } from '../../../src/imaging/render/silver.ts';
import { photographSeries, type Lighting } from '../../../src/imaging/render/photograph.ts';
import { standInPlate } from '../../../src/imaging/render/test-pair.ts';
import { type View, viewHomography } from '../../../src/imaging/render/view.ts';

const view: View = {
  width: 240,
  height: 180,
  pixelsPerMillimetre: 3.2,
  distance: 700,
  shift: [0, 0],
  turn: 0,
  tilt: [0, 0],
};
const field = {
  distance: 400,
  half: 140,
  slope: [0, 0] as const,
  hotSpot: 0,
  glass: { index: 1.52, thickness: 1, angle: 45 },
};
const lamp = { bearing: 315, height: 45, distance: 600, size: 60, strength: 1 };

const plate = standInPlate(21, { width: 240 });

/** The plate under both lights at once: the lamp, and a field of the given luminance in the mirror. */
function both(luminance: number): Lighting {
  return { ...axialLight({ ...field, luminance }, 3.2), lamps: [lamp] };
}

/** Noisy 16-bit captures as a technician has them: mean signal of two parts, divided by the gain. */
function measured(
  lighting: Lighting,
  gain: number,
  parts: readonly (readonly boolean[])[],
): number[] {
  const sum = parts.map(() => 0);
  const sensor = { gain, fullWell: 45_000, readNoise: 4, noise: 1, depth: 16 as const, seed: 3 };
  photographSeries(
    plate,
    { view, blur: 0.6, fallOff: false },
    [{ lighting, sensor }],
    (_, y, [, g]) => {
      for (let x = 0; x < view.width; x += 1) {
        parts.forEach((part, i) => {
          if (part[y * view.width + x]) sum[i] += Math.round(g[x] * 65535) / 65535;
        });
      }
    },
  );
  return parts.map((part, i) => sum[i] / part.filter(Boolean).length / gain);
}

/** Pixels whose coverage lies between two bounds, away from rim and edge. */
function partWith(low: number, high: number): boolean[] {
  const line = emptyRow(view.width);
  const layOut = plateRows(plate, viewHomography(view), 3.2, 0, line);
  const part: boolean[] = [];
  for (let y = 0; y < view.height; y += 1) {
    layOut(y);
    for (let x = 0; x < view.width; x += 1) {
      const middle = Math.hypot(line.x[x] / 24, line.y[x] / 17) < 1;
      const clean = line.dust[x] === 0 && line.scratch[x] === 0;
      part.push(middle && clean && line.coverage[x] > low && line.coverage[x] < high);
    }
  }
  return part;
}

test('the turning point from P and N predicts where a plate under both lights loses its contrast', () => {
  const light = partWith(0.25, 0.7);
  const dark = partWith(0, 0.13);
  expect(light.filter(Boolean).length).toBeGreaterThan(300);
  expect(dark.filter(Boolean).length).toBeGreaterThan(300);
  const [lightP, darkP] = measured(sideLight(lamp, 700), 1.4, [light, dark]);
  const even = axialLight({ ...field, luminance: 1 }, 3.2);
  const [lightN, darkN] = measured(even, 9, [light, dark]);
  const predicted = (lightP - darkP) / (darkN - lightN);
  // Rendered directly: bisect for the luminance at which both parts are equally bright. The gain
  // keeps the brightest field below the clip level.
  const contrast = (luminance: number) => {
    const [inLight, inDark] = measured(both(luminance), 0.3, [light, dark]);
    return inLight - inDark;
  };
  let low = 0.25 * predicted;
  let high = 2 * predicted;
  expect(contrast(low)).toBeGreaterThan(0);
  expect(contrast(high)).toBeLessThan(0);
  for (let i = 0; i < 9; i += 1) {
    const middle = (low + high) / 2;
    if (contrast(middle) > 0) low = middle;
    else high = middle;
  }
  const found = (low + high) / 2;
  expect(Math.abs(predicted / found - 1)).toBeLessThan(0.02);
});

test('light adds up: lamp and field together give the sum of each alone', () => {
  const row = (lighting: Lighting) => {
    const line = emptyRow(view.width);
    const surface = emptyReflectances(view.width);
    plateRows(plate, viewHomography(view), 3.2, 0, line)(90);
    reflectRow(surface, line, plate, grownFilmColours());
    const out = emptyChannels(view.width);
    lightRow(out, line, surface, { view }, lighting, 90);
    return out[1];
  };
  const one = row(both(0.7));
  const lampAlone = row({ ...both(0), surround: { ...both(0).surround, dark: 0 } });
  const fieldAlone = row({ ...both(0.7), lamps: [] });
  for (let x = 0; x < view.width; x += 1) {
    expect(one[x]).toBeCloseTo(lampAlone[x] + fieldAlone[x], 3);
  }
});
