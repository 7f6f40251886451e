/**
 * The ghost's place on rendered plates. The renderer displaces the picture itself; that it does
 * so by the optics' number is what `tests/optics/renderer.test.ts` says.
 */
import { describe, expect, test } from 'vitest';
import { edgeProfile, ghostStep } from '../../../src/imaging/inspect/ghost-step.ts';
import { axialPicture, type AxialOptions } from '../../fixtures/inspect/axial-plate.ts';

function ghostOf(options: AxialOptions) {
  const picture = axialPicture(options);
  const [, topRight, bottomRight] = picture.outline.corners;
  const reach = Math.floor(((options.margin ?? 4) - 0.6) * options.pixelsPerMillimetre);
  const profile = edgeProfile(picture, topRight, bottomRight, reach);
  return { found: ghostStep(profile), truth: picture.ghostPixels };
}

const glass = { index: 1.52, thickness: 1, angle: 45 };

describe('the ghost beside the plate’s edge', () => {
  test.each([
    { pixelsPerMillimetre: 12, glass, seed: 1 },
    { pixelsPerMillimetre: 8, glass: { ...glass, thickness: 3 }, seed: 2 },
    { pixelsPerMillimetre: 8, glass: { ...glass, index: 1.47, thickness: 2 }, seed: 3, turn: 0.8 },
  ])('is found within 0.5 px: $glass at $pixelsPerMillimetre px per mm', (options) => {
    const { found, truth } = ghostOf(options);
    expect(found.ok && found.value.pixels).toBeGreaterThan(truth - 0.5);
    expect(found.ok && found.value.pixels).toBeLessThan(truth + 0.5);
  });

  test('is not found where there is none', () => {
    const { found } = ghostOf({ pixelsPerMillimetre: 8, glass, ghost: false });
    expect(found).toEqual({ ok: false, reason: 'no ghost stands out beside the plate' });
  });

  test('is not looked for without room beside the plate', () => {
    expect(ghostOf({ pixelsPerMillimetre: 8, glass, margin: 1.2 }).found.ok).toBe(false);
  });

  test('a made step of known place and strength is measured', () => {
    // An edge with a straight ground and a copy of itself 17.3 px out, 0.8 % strong: closed form.
    const reach = 60;
    const edge = (k: number) => 0.01 + 1 / (1 + Math.exp(2 * k));
    const profile = Float64Array.from(
      { length: 2 * reach + 1 },
      (_, i) => edge(i - reach) + 0.008 * edge(i - reach - 17.3) + 1e-5 * i,
    );
    const found = ghostStep(profile);
    expect(found.ok && found.value.pixels).toBeCloseTo(17.3, 1);
    // 1 % too much: the profile that serves as the shape has the ghost in it.
    expect(found.ok && found.value.strength).toBeCloseTo(0.008, 3);
  });
});
