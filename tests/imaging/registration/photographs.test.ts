/**
 * Real photographs, warped by known maps, tone-inverted and spoiled; and the one published pair
 * with a homography that Debian carries.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { project, type Homography } from '../../../src/imaging/conventions.ts';
import { homographyFromPoints } from '../../../src/imaging/registration/control-points.ts';
import { cornerDistance, rescale } from '../../../src/imaging/registration/homography.ts';
import { lays } from '../../../src/imaging/registration/lay.ts';
import { refineThroughPyramid } from '../../../src/imaging/registration/pyramid-refine.ts';
import { register } from '../../../src/imaging/registration/register.ts';
import { checkWorking } from '../../../src/imaging/registration/tile-check.ts';
import { prepareWorkingPair } from '../../../src/imaging/registration/working-pair.ts';
import { hasShared, sharedPath } from '../../shared.ts';
import { spoiledPair } from './pairs.ts';
import { isThere, loadCapture, loadPicture, opencvFolder, skimageFolder } from './photographs.ts';

async function expectLaid(path: string, seed: number, pictureWidth: number): Promise<void> {
  const picture = await loadPicture(path, pictureWidth);
  const width = Math.round(picture.width * 0.84);
  const height = Math.round(picture.height * 0.84);
  const lay = lays[seed % 4];
  const pair = spoiledPair(picture, { width, height, seed, lay });
  const outcome = register(pair.base, pair.moving);
  if (!outcome.ok) throw new Error(outcome.reason);
  const { homography, polarity } = outcome.value;
  // The 95th percentile aimed at for ordinary pairs; measured here: 0.28 px on the camera man, whose
  // 512 pixels are enlarged first, below 0.2 on the others.
  expect(cornerDistance(homography, pair.truth, width, height)).toBeLessThan(0.3);
  expect(outcome.value.lay).toBe(lay);
  expect(polarity).toBe('opposite');
}

describe.skipIf(!isThere(skimageFolder))('photographs of scikit-image (skipped without it)', () => {
  test.each(['astronaut.png', 'camera.png', 'coffee.png', 'chelsea.png', 'moon.png', 'rocket.jpg'])(
    '%s as a negative lies on itself within 0.3 px',
    async (name) => {
      await expectLaid(join(skimageFolder, name), 40 + name.length, 700);
    },
  );
});

const plates = ['portrait-daguerreotype-1856.jpg', 'portrait-glass-plate-49mp.jpg'];
describe.skipIf(!hasShared('data', 'plates'))(
  'photographs of real plates (skipped without the check material)',
  () => {
    test.each(plates)('%s as a negative lies on itself within 0.3 px', async (name) => {
      await expectLaid(sharedPath('data', 'plates', name), 60 + name.length, 800);
    });
  },
);

/**
 * A painted wall from two directions about 40 degrees apart, which no plate under a fixed camera
 * is. Published with its homography by Mikolajczyk, K. et al. (2005). A comparison of affine
 * region detectors. IJCV 65, 43-72. doi:10.1007/s11263-005-3848-x; as OpenCV's samples carry it.
 */
describe.skipIf(!isThere(join(opencvFolder, 'H1to3p.xml')))(
  'the graffiti wall, graf1 to graf3 (skipped without opencv-doc)',
  async () => {
    if (!isThere(join(opencvFolder, 'H1to3p.xml'))) return;
    const text = readFileSync(join(opencvFolder, 'H1to3p.xml'), 'utf8');
    const numbers = /<data>([^<]*)<\/data>/.exec(text)?.[1].trim().split(/\s+/).map(Number);
    const published = numbers as unknown as Homography;
    const wall = await loadCapture(join(opencvFolder, 'graf1.png'));
    const aslant = await loadCapture(join(opencvFolder, 'graf3.png'));
    const marked = [
      [100, 100],
      [700, 80],
      [650, 550],
      [120, 560],
    ].map(([x, y]) => {
      const [hx, hy] = project(published, x, y);
      return { base: [x, y] as const, here: [hx + 3, hy - 2] as const };
    });

    test('is reached from points 3.6 px off, to 0.5 px of the published map', () => {
      const pair = prepareWorkingPair(wall, aslant, 1);
      const start = rescale(homographyFromPoints(marked) ?? published, 0.5);
      const { levels } = pair.base;
      const map = refineThroughPyramid(levels, pair.moving.levels, start, 1, true);
      if (!map) throw new Error('nothing to hold on to');
      for (const { base } of marked) {
        const [x, y] = project(map, ...base);
        const [px, py] = project(published, ...base);
        expect(Math.hypot(x - px, y - py)).toBeLessThan(0.5);
      }
      // The tiles scatter no more about our map than about the published one, ...
      const ours = checkWorking(pair, map).cornerDeviation;
      const theirs = checkWorking(pair, published).cornerDeviation;
      expect(ours).toBeLessThan(theirs);
      // ... yet by more than the gate lets through for either: foreshortened detail is soft.
      expect(ours).toBeGreaterThan(0.3);
      expect(register(wall, aslant, { controlPoints: marked }).ok).toBe(false);
    });
  },
);
