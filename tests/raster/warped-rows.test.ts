import { describe, expect, test } from 'vitest';
import { linearLight } from '../../src/imaging/colour/light.ts';
import { invert3, multiply3 } from '../../src/imaging/colour/matrix3.ts';
import { identity, project, type Homography } from '../../src/imaging/conventions.ts';
import { bend, radialAbout } from '../../src/imaging/radial.ts';
import { warpRows } from '../../src/raster/warped-rows.ts';
import { rowsFrom, seeded } from './test-pictures.ts';

const [width, height] = [320, 240];

/** A smooth picture that is known between its pixels, 0 to 65535. */
function scene(x: number, y: number): number {
  return 30000 + 14000 * Math.sin(x / 11 + y / 17) + 9000 * Math.cos(y / 9 - x / 23);
}

function sceneRows(channels: 1 | 3) {
  const data = new Uint16Array(width * height * channels);
  for (let i = 0; i < width * height; i += 1) {
    const value = Math.round(scene(i % width, Math.floor(i / width)));
    data.fill(value, i * channels, (i + 1) * channels);
  }
  return rowsFrom(width, height, channels, data, linearLight);
}

async function warped(
  m: Homography,
  size: readonly [number, number] = [width, height],
  channels: 1 | 3 = 1,
): Promise<Uint16Array> {
  const out: number[] = [];
  for await (const { data } of warpRows(sceneRows(channels), m, ...size).batches())
    out.push(...data);
  return Uint16Array.from(out);
}

function turned(degrees: number): Homography {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const [cx, cy] = [(width - 1) / 2, (height - 1) / 2];
  return [c, -s, cx - c * cx + s * cy, s, c, cy - s * cx - c * cy, 0, 0, 1];
}

const perspective: Homography = [1, 0, 0, 0, 1, 0, 2e-5, -1e-5, 1];

describe('a picture laid into another frame', () => {
  test.each([
    ['shifted by 3.3, -2.7', [1, 0, 3.3, 0, 1, -2.7, 0, 0, 1]],
    ['turned by 0.3 degrees', turned(0.3)],
    ['turned by -2 degrees, in perspective', multiply3(perspective, turned(-2))],
    ['turned by 5 degrees, in perspective', multiply3(perspective, turned(5))],
    ['mirrored', [-1, 0, width - 1, 0, 1, 0, 0, 0, 1]],
    ['half turned', turned(180.4)],
    ['enlarged', [1.01, 0, 0, 0, 1.01, 0, 0, 0, 1]],
  ] as readonly (readonly [string, Homography])[])(
    'is the analytic scene %s within 0.1 % of full scale, black outside',
    async (_, m) => {
      const back = invert3(m);
      const out = await warped(m);
      let [worst, inside] = [0, 0];
      for (let y = 0; y < height; y += 1) {
        for (let x = 0; x < width; x += 1) {
          const [u, v] = project(back, x, y);
          const value = out[y * width + x];
          if (u < -0.5001 || v < -0.5001 || u > width - 0.4999 || v > height - 0.4999) {
            expect(value).toBe(0);
          } else if (u > 1 && v > 1 && u < width - 3 && v < height - 3) {
            inside += 1;
            worst = Math.max(worst, Math.abs(value - scene(u, v)));
          }
        }
      }
      expect(inside).toBeGreaterThan(width * height * 0.8);
      expect(worst).toBeLessThanOrEqual(65.5);
    },
  );

  test('is bent back where the lens changed, within the same bound', async () => {
    const m = multiply3(perspective, turned(-2));
    const radial = radialAbout(width, height, 0.02);
    const out: number[] = [];
    for await (const { data } of warpRows(sceneRows(1), m, width, height, radial).batches()) {
      out.push(...data);
    }
    const back = invert3(m);
    let [worst, inside] = [0, 0];
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        const [u, v] = project(back, ...bend(radial, x, y));
        if (!(u > 1 && v > 1 && u < width - 3 && v < height - 3)) continue;
        inside += 1;
        worst = Math.max(worst, Math.abs(out[y * width + x] - scene(u, v)));
      }
    }
    expect(inside).toBeGreaterThan(width * height * 0.8);
    expect(worst).toBeLessThanOrEqual(65.5);
  });

  test('would miss that bound by far if it were half a pixel off', async () => {
    const out = await warped([1, 0, 0.5, 0, 1, 0, 0, 0, 1]);
    expect(Math.abs(out[100 * width + 100] - scene(100, 100))).toBeGreaterThan(65.5);
  });

  test('is unchanged by the identity, in three channels too', async () => {
    const grey = await warped(identity);
    const rgb = await warped(identity, [width, height], 3);
    expect(grey[12345]).toBe(Math.round(scene(12345 % width, Math.floor(12345 / width))));
    for (let i = 0; i < grey.length; i += 501) expect(rgb[i * 3 + 1]).toBe(grey[i]);
  });

  test('may be larger or smaller than the source', async () => {
    const out = await warped([1, 0, 10, 0, 1, 20, 0, 0, 1], [400, 300]);
    expect(out).toHaveLength(400 * 300);
    expect(out[0]).toBe(0);
    expect(out[20 * 400 + 10]).toBe(Math.round(scene(0, 0)));
  });

  test('keeps noise in range: nothing wraps round at black or white', async () => {
    const random = seeded(11);
    const data = new Uint16Array(64 * 64).map(() => (random() < 0.5 ? 0 : 65535));
    const m: Homography = [1, 0, 0.5, 0, 1, 0.5, 0, 0, 1];
    const source = rowsFrom(64, 64, 1, data, linearLight);
    let [low, high] = [0, 0];
    for await (const { data: row } of warpRows(source, m, 64, 64).batches()) {
      low += row.filter((v) => v === 0).length;
      high += row.filter((v) => v === 65535).length;
    }
    // Overshoots are cut at the ends, so both ends are well populated.
    expect(low).toBeGreaterThan(200);
    expect(high).toBeGreaterThan(200);
  });

  test('is refused when it would need the whole capture for one row', () => {
    const quarter: Homography = [0, -1, 20000, 1, 0, 0, 0, 0, 1];
    const source = { ...sceneRows(3), width: 20000, height: 20000 };
    expect(() => warpRows(source, quarter, 20000, 20000)).toThrow(
      'Turn the capture so that it lies as the base does',
    );
  });
});
