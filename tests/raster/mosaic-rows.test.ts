import { beforeAll, describe, expect, test } from 'vitest';
import { join } from 'node:path';
import { project } from '../../src/imaging/conventions.ts';
import { median, quantile } from '../../src/imaging/inspect/quantile.ts';
import { assembleMosaic, type Assembly } from '../../src/imaging/mosaic/assemble.ts';
import { seamAt } from '../../src/imaging/mosaic/seam-weights.ts';
import { startSurvey } from '../../src/imaging/mosaic/survey.ts';
import { compose, enlargement } from '../../src/imaging/registration/homography.ts';
import { openMosaic } from '../../src/raster/mosaic-rows.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import {
  luminanceOf,
  photographed,
  renderCloseUps,
  type CloseUps,
} from '../imaging/mosaic/rendered-close-ups.ts';
import { scratchFolder } from './scratch-folder.ts';

/** Linear luminance, 0 to 65535. */
interface Light {
  readonly width: number;
  readonly height: number;
  readonly data: ArrayLike<number>;
}

describe('a mosaic of three by three rendered close-ups, one of them exposed 12 % longer', () => {
  let shot: CloseUps;
  let made: Assembly;
  let drawn: Light;
  let truth: Light;
  const folder = scratchFolder();

  beforeAll(async () => {
    shot = renderCloseUps(5, { exposures: { 5: 1.12 }, glints: false });
    const tiles = shot.tiles.map((tile, i) => ({ ...tile, file: `close-up-${i}.tif` }));
    const surveyor = startSurvey(tiles, shot.overlap);
    for (const [i, { file, width, height, data }] of tiles.entries()) {
      const picture = { width, height, channels: 3, depth: 16, data, profile: 'srgb' } as const;
      await writePicture(join(folder, file), { ...picture, format: 'tiff' });
      surveyor.add(i, luminanceOf(data, width, height));
    }
    const { base } = shot;
    const photo = photographed(shot.plate, base, shot.lighting, { noise: 1, seed: 99 });
    const plane = luminanceOf(photo, base.width, base.height);
    const assembled = assembleMosaic(tiles, surveyor.finish(), {
      plane,
      pixelsPerMillimetre: null,
    });
    if (!assembled?.hung.ok) throw new Error('The mosaic was not assembled.');
    made = assembled;
    drawn = await luminanceOfRows(made, folder);
    const fine = {
      ...base,
      width: 2 * base.width,
      height: 2 * base.height,
      pixelsPerMillimetre: 2 * base.pixelsPerMillimetre,
    };
    const exact = photographed(shot.plate, fine, shot.lighting, { noise: 0, seed: 1 });
    truth = luminanceOf(exact, fine.width, fine.height);
  }, 120_000);

  test('lies in the frame of the base, twice as fine', () => {
    expect(made.hung.ok && made.hung.scale).toBe(2);
    expect([drawn.width, drawn.height]).toEqual([2 * shot.base.width, 2 * shot.base.height]);
  });

  test('puts every close-up where the renderer had it: median at most 0.3 px', () => {
    const errors = shot.tiles.flatMap(({ width, height, toBase }, t) => {
      const exact = compose(enlargement(2), toBase);
      return grid(width, height, 60).map(([x, y]) => {
        const a = project(exact, x, y);
        const b = project(made.placement.maps[t], x, y);
        return Math.hypot(a[0] - b[0], a[1] - b[1]);
      });
    });
    expect(median(errors)).toBeLessThan(0.3);
    expect(Math.max(...errors)).toBeLessThan(0.6);
  });

  test('shows no seam: no step above 1 % of the local mean against the renderer’s own picture', () => {
    const steps = seamSteps(made, drawn, truth);
    expect(steps.length).toBeGreaterThan(60);
    expect(Math.max(...steps)).toBeLessThan(0.01);
    // The claim is worth something: without balance the seams show.
    expect(made.gains[5] / made.gains[4]).toBeLessThan(0.95);
  });

  test('keeps the detail: within the close-ups it is the plate and no blend of misplaced ones', () => {
    // Local contrast, to be free of the lamp that moved: each pixel over the mean around it.
    const ratios: number[] = [];
    for (const [x, y] of grid(drawn.width, drawn.height, 9)) {
      const [a, b] = [contrast(drawn, x, y), contrast(truth, x, y)];
      if (a !== null && b !== null) ratios.push(Math.abs(a - b));
    }
    expect(ratios.length).toBeGreaterThan(5000);
    expect(quantile(ratios, 0.5)).toBeLessThan(0.03);
  });
});

async function luminanceOfRows({ plan }: Assembly, folder: string): Promise<Light> {
  const source = await openMosaic(plan, folder);
  const data = new Float32Array(plan.width * plan.height);
  let at = 0;
  for await (const { data: row, rows } of source.batches()) {
    for (let i = 0; i < rows * plan.width; i += 1, at += 1) {
      data[at] = 0.2126 * row[3 * i] + 0.7152 * row[3 * i + 1] + 0.0722 * row[3 * i + 2];
    }
  }
  await source.close();
  return { width: plan.width, height: plan.height, data };
}

function grid(width: number, height: number, step: number): (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  for (let y = step; y < height - step; y += step) {
    for (let x = step; x < width - step; x += step) points.push([x, y]);
  }
  return points;
}

/** A pixel over the mean of the 9 x 9 around it; null in the dark. */
function contrast({ width, data }: Light, x: number, y: number): number | null {
  let sum = 0;
  for (let v = -4; v <= 4; v += 1) {
    for (let u = -4; u <= 4; u += 1) sum += data[(y + v) * width + x + u];
  }
  const mean = sum / 81;
  return mean < 3000 ? null : data[y * width + x] / mean;
}

/**
 * Along every seam, in patches of 32 px: how much the ratio to the truth changes from the 16 px
 * before the seam to the 16 px after it. The median of 512 pixels, of which noise of 1 % a pixel
 * leaves less than 0.1 %.
 */
function seamSteps({ plan }: Assembly, drawn: Light, truth: Light): number[] {
  const steps: number[] = [];
  const ratio = (place: (k: number) => readonly [number, number], from: number, to: number) => {
    const ratios: number[] = [];
    for (let k = 0; k < 32; k += 1) {
      const [x, y] = place(k);
      for (let d = from; d < to; d += 1) {
        const [px, py] = acrossX ? [x + d, y] : [x, y + d];
        if (px < 0 || py < 0 || px >= drawn.width || py >= drawn.height) return NaN;
        const exact = truth.data[py * drawn.width + px];
        // In the dark beside the plate there is no tone to compare.
        if (exact > 0.01 * 65535) ratios.push(drawn.data[py * drawn.width + px] / exact);
      }
    }
    return ratios.length < 256 ? NaN : median(ratios);
  };
  let acrossX = true;
  const along = (place: (k: number) => readonly [number, number], length: number) => {
    for (let start = 0; start + 32 <= length; start += 32) {
      const there = (k: number) => place(start + k);
      const step = Math.abs(ratio(there, -16, 0) / ratio(there, 1, 17) - 1);
      if (!Number.isNaN(step)) steps.push(step);
    }
  };
  for (const [b, { seams }] of plan.bands.entries()) {
    // A band's own seams show only between the seams above and below it.
    const inside = (x: number, y: number) =>
      (b === 0 || y > seamAt(plan.between[b - 1], x, plan.cell) + 16) &&
      (b === plan.bands.length - 1 || y < seamAt(plan.between[b], x, plan.cell) - 16);
    for (const seam of seams) {
      const place = (y: number) => [Math.round(seamAt(seam, y, plan.cell)), y] as const;
      const rows = Array.from({ length: plan.height }, (_, y) => y);
      const shown = rows.filter((y) => inside(...place(y)));
      along((k) => place(shown[k]), shown.length);
    }
  }
  acrossX = false;
  for (const seam of plan.between) {
    along((x) => [x, Math.round(seamAt(seam, x, plan.cell))], plan.width);
  }
  return steps;
}
