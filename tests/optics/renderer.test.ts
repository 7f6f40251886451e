/**
 * The optics against the physical renderer of plates, which knows nothing of them: what the
 * planner recommends is set up, photographed, and looked at. Small plates of bare mirror.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { photographSeries, type Lighting } from '../../src/imaging/render/photograph.ts';
import { darkSurround, sideLight } from '../../src/imaging/render/lighting.ts';
import type { Plate } from '../../src/imaging/render/plate.ts';
import { standInPlate } from '../../src/imaging/render/test-pair.ts';
import type { View } from '../../src/imaging/render/view.ts';
import { electronsForRatio, planBracket } from '../../src/optics/bracket-plan.ts';
import { glassFigures } from '../../src/optics/axial-glass.ts';
import { doublePass } from '../../src/optics/glass-sheet.ts';
import { excludedFrom } from '../../src/optics/lamp-zone.ts';
import { panelToFill, seenUnevenness } from '../../src/optics/light-panel.ts';
import { edgeProfile, ghostStep } from '../../src/imaging/inspect/ghost-step.ts';
import { axialPicture } from '../fixtures/inspect/axial-plate.ts';

const plateSize = [60, 45] as const;
const cameraDistance = 700;
const view: View = {
  width: 150,
  height: 113,
  pixelsPerMillimetre: 2.4,
  distance: cameraDistance,
  shift: [0, 0],
  turn: 0,
  tilt: [0, 0],
};

/** A polished plate without picture, lines, dust or scratches. */
function bareMirror(undulation = 0): Plate {
  return {
    ...standInPlate(3, { width: 60 }),
    width: plateSize[0],
    height: plateSize[1],
    pictures: [],
    density: 0,
    polish: 0,
    undulation,
    tarnish: { openings: [], rim: 0, reach: 1, haze: 0, edge: 0 },
    scratches: [],
    dust: [],
  };
}

/** Luminance of every pixel inside the plate, by `margin` mm, in units that never clip. */
function luminances(plate: Plate, lighting: Lighting, margin = 1): number[] {
  const found: number[] = [];
  const tiny = 1e-6;
  const sensor = { gain: tiny, fullWell: 1, readNoise: 0, noise: 0, depth: 16, seed: 1 } as const;
  const standing = { view, blur: 0, fallOff: false };
  const inside = (k: number, length: number, size: number) =>
    Math.abs(k - (length - 1) / 2) < (size / 2 - margin) * view.pixelsPerMillimetre;
  photographSeries(plate, standing, [{ lighting, sensor }], (_, y, [, green]) => {
    if (!inside(y, view.height, plateSize[1])) return;
    for (let x = 0; x < view.width; x += 1) {
      if (inside(x, view.width, plateSize[0])) found.push(green[x] / tiny);
    }
  });
  return found;
}

describe('a lamp beside the excluded zone', () => {
  // A small lamp: the renderer's polished metal itself spreads a point by about 0.3 degrees.
  const lamp = { distance: 650, size: 6, strength: 1 };
  const stand = { plate: plateSize, cameraDistance };
  /** Brighter than a perfect white surface that faces the lamp: only a mirror does that. */
  const specular = (plate: Plate, bearing: number, height: number) =>
    luminances(plate, sideLight({ ...lamp, bearing, height }, cameraDistance), 0).filter(
      (value) => value > lamp.strength,
    ).length;

  test.each([0, 60, 135, 270])('bearing %i: inside some pixels, outside none', (bearing) => {
    const place = { ...lamp, bearing };
    const flat = bareMirror();
    expect(specular(flat, bearing, excludedFrom(place, stand, 0) + 0.3)).toBeGreaterThan(0);
    expect(specular(flat, bearing, excludedFrom(place, stand, 1) - 0.3)).toBe(0);
  });

  test('a plate that is warped needs the warp in its zone', () => {
    // Undulation of 0.3 degrees root mean square, about one at its steepest.
    const warped = bareMirror(0.3);
    const place = { ...lamp, bearing: 90 };
    const between = (excludedFrom(place, stand, 0) + excludedFrom(place, stand, 1)) / 2;
    expect(specular(warped, 90, between)).toBeGreaterThan(0);
    expect(specular(warped, 90, excludedFrom(place, stand, 2))).toBe(0);
  });
});

describe('a panel of the recommended size', () => {
  const distance = 420;
  const stand = { cameraDistance, openingDiameter: 12, warp: 0 };
  const slope = 0.1;
  const field = (half: number): Lighting => ({
    lamps: [],
    surround: {
      ...darkSurround,
      kind: 'field',
      luminance: 1,
      distance,
      half,
      lens: 0,
      slope: [slope, 0],
    },
    panel: 0,
    glass: null,
  });
  /** Left out at each edge, where the sheet is rounded, mm. */
  const rim = 2;
  const unevenness = (half: number, margin = rim) => {
    const seen = luminances(bareMirror(), field(half), margin);
    return Math.max(...seen) / Math.min(...seen) - 1;
  };

  test('fills the plate, as evenly as predicted from the panel’s own slope', () => {
    const panel = panelToFill(plateSize, stand, distance);
    const mirror = { ...stand, plateWidth: plateSize[0] - 2 * rim };
    const change = seenUnevenness(panel.width, slope, mirror, distance);
    // From a change about the middle to brightest over darkest.
    const predicted = (1 + change / 2) / (1 - change / 2) - 1;
    const measured = unevenness(panel.width / 2);
    // The outermost pixel ends up to half a pixel (0.4 % of the width) before the rim.
    expect(measured).toBeLessThanOrEqual(predicted * 1.001);
    expect(measured).toBeGreaterThan(predicted * 0.98);
  });

  test('a tenth less than the mirror sees leaves the edge dark', () => {
    const panel = panelToFill(plateSize, stand, distance);
    expect(unevenness((panel.width / 2 / 1.1) * 0.9, 0.8)).toBeGreaterThan(1);
  });

  test('comes back through the glass with the predicted loss', () => {
    const panel = panelToFill(plateSize, stand, distance);
    const even = field(panel.width / 2);
    const through = doublePass(1.52, 45);
    const glass = { through, ghostPixels: 9, ghostStrength: 0 };
    const [direct, glazed] = [even, { ...even, glass }].map((lighting) => {
      const values = luminances(bareMirror(), lighting);
      return values.reduce((a, b) => a + b, 0) / values.length;
    });
    const figures = glassFigures({ index: 1.52, thickness: 1, angle: 45 }, null);
    expect(Math.log2(direct / glazed)).toBeCloseTo(figures.lossStops, 6);
  });
});

test.each([
  { thickness: 1, pixelsPerMillimetre: 10 },
  { thickness: 2, pixelsPerMillimetre: 7 },
])(
  'the ghost of $thickness mm lies where predicted within 0.5 px',
  ({ thickness, pixelsPerMillimetre }) => {
    const glass = { index: 1.52, thickness, angle: 45 };
    const picture = axialPicture({ pixelsPerMillimetre, glass, seed: 8, turn: 0 });
    const [, top, bottom] = picture.outline.corners;
    const found = ghostStep(
      edgeProfile(picture, top, bottom, Math.floor(3.4 * pixelsPerMillimetre)),
    );
    const { ghostPixels } = glassFigures(glass, pixelsPerMillimetre);
    expect(found.ok).toBe(true);
    expect(found.ok && Math.abs(found.value.pixels - (ghostPixels ?? NaN))).toBeLessThan(0.5);
  },
);

describe('the planned bracket', () => {
  // A small, noisy sensor: four stops in a frame, so that this plate needs several.
  const sensor = { fullWell: 8000, readNoise: 12 };
  const ratio = 20;
  let light: number[];

  beforeAll(() => {
    const plate = { ...standInPlate(6, { width: 150, density: 0.8 }), width: 60, height: 45 };
    const lamp = { bearing: 315, height: 45, distance: 600, size: 60, strength: 1 };
    const lighting = sideLight(lamp, cameraDistance);
    // A black far below the usual cloth, so that the range is a long one.
    const surround = { ...lighting.surround, luminance: 4e-5, dark: 4e-5 };
    light = luminances(plate, { ...lighting, surround }).sort((a, b) => a - b);
  });

  /** Share of places that no frame holds between noise and clip. */
  const missed = (seconds: readonly number[], clipSeconds: number, brightest: number) => {
    const floor = electronsForRatio(ratio, sensor.readNoise) / sensor.fullWell;
    const held = (value: number) =>
      seconds.some((time) => {
        const signal = (value / brightest) * (time / clipSeconds);
        return signal < 1 && signal >= floor;
      });
    return light.filter((value) => !held(value)).length / light.length;
  };

  test('leaves under 0.1 % clipped or empty, which no single frame does', () => {
    // What matters is all but a fortieth of a per cent at each end.
    const [darkest, brightest] = [0.00025, 0.99975].map((q) => light[Math.floor(q * light.length)]);
    const range = brightest / darkest;
    const plan = planBracket({ range, clipSeconds: 0.5, sensor, ratio, mostStep: 2 });
    expect(plan.seconds.length).toBeGreaterThan(1);
    expect(missed(plan.seconds, 0.5, brightest)).toBeLessThan(0.001);
    for (const time of plan.seconds) {
      expect(missed([time], 0.5, brightest)).toBeGreaterThan(0.001);
    }
  });
});
