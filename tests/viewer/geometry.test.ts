import { describe, expect, test } from 'vitest';
import { sizeAtLeast, wholePicture } from '../../src/viewer/addresses.ts';
import {
  acrossBox,
  dividerLine,
  dividerShare,
  lineOnScreen,
} from '../../src/viewer/divider-line.ts';
import { lengthWords, measuredLength } from '../../src/viewer/measure/length-measure.ts';
import {
  fromViewport,
  placingOf,
  regionBetween,
  regionOnScreen,
  shapedAs,
  toPlate,
  toScreen,
  toViewport,
} from '../../src/viewer/placing.ts';
import { scaleBar } from '../../src/viewer/scale-bar.ts';
import { brightArc, mirrorRay, section } from '../../src/viewer/tilt-drawing.ts';
import './english.ts';

const bounds = { x: 0.25, y: 0.1, width: 0.5, height: 0.25 };
const box = { width: 800, height: 400 };

describe('where the plate lies on the screen', () => {
  test('half the plate across 800 CSS pixels is 0.4 CSS pixels a plate pixel', () => {
    const p = placingOf(bounds, box, 4000, false);
    expect(p.scale).toBeCloseTo(0.4, 12);
    expect(toScreen(p, 1000, 400)).toEqual([0, 0]);
    expect(toScreen(p, 3000, 1400)).toEqual([800, 400]);
  });

  test('turned left for right, the plate’s right side is on the left', () => {
    const p = placingOf(bounds, box, 4000, true);
    expect(toScreen(p, 3000, 400)[0]).toBeCloseTo(0, 9);
    expect(toScreen(p, 1000, 400)[0]).toBeCloseTo(800, 9);
  });

  test.each([false, true])('there and back is the same place (mirrored: %s)', (mirrored) => {
    const p = placingOf(bounds, box, 4000, mirrored);
    const [x, y] = toPlate(p, ...toScreen(p, 1234.5, 567.25));
    expect(x).toBeCloseTo(1234.5, 9);
    expect(y).toBeCloseTo(567.25, 9);
    const region = { x: 1100, y: 500, width: 300, height: 220 };
    const on = regionOnScreen(p, region);
    const back = regionBetween(p, [on.x, on.y], [on.x + on.width, on.y + on.height]);
    expect(back.x).toBeCloseTo(region.x, 9);
    expect(back.width).toBeCloseTo(region.width, 9);
  });

  test('a rounded region gets the shape of the box back; another shape is left alone', () => {
    const region = { x: 10, y: 20, width: 300, height: 200 };
    expect(shapedAs(region, 300.9 / 200)).toEqual({
      ...region,
      y: expect.closeTo(20.3, 1) as number,
      height: expect.closeTo(199.4, 1) as number,
    });
    expect(shapedAs(region, 1)).toBe(region);
  });

  test('viewport units there and back', () => {
    const region = { x: 812, y: 440, width: 300, height: 220 };
    expect(fromViewport(toViewport(region, 4000), 4000)).toEqual(region);
  });
});

describe('the divider', () => {
  const screen = { x: 0, y: 0, width: 800, height: 400 };

  test('stands upright at a turn of 0, at its share of the width', () => {
    const line = dividerLine(screen, 0.25, 0);
    expect(acrossBox(line, screen)).toEqual([
      [200, 0],
      [200, 400],
    ]);
  });

  test('half-way goes through the middle at every turn', () => {
    for (let turn = -90; turn <= 90; turn += 15) {
      const { nx, ny, d } = dividerLine(screen, 0.5, turn);
      expect(nx * 400 + ny * 200).toBeCloseTo(d, 9);
    }
  });

  test('at both ends of its way leaves one view alone, at every turn', () => {
    const corners = [0, 800].flatMap((x) => [0, 400].map((y) => [x, y]));
    for (let turn = -90; turn <= 90; turn += 15) {
      const start = dividerLine(screen, 0, turn);
      const end = dividerLine(screen, 1, turn);
      for (const [x, y] of corners) {
        expect(start.nx * x + start.ny * y - start.d).toBeGreaterThanOrEqual(-1e-9);
        expect(end.nx * x + end.ny * y - end.d).toBeLessThanOrEqual(1e-9);
      }
    }
  });

  test('taken hold of at a point passes through that point', () => {
    const share = dividerShare(screen, 30, 300, 120);
    const { nx, ny, d } = dividerLine(screen, share, 30);
    expect(nx * 300 + ny * 120).toBeCloseTo(d, 9);
  });

  test.each([false, true])('fixed to the plate keeps its side (mirrored: %s)', (mirrored) => {
    const placing = placingOf(bounds, box, 4000, mirrored);
    const plate = dividerLine({ x: 0, y: 0, width: 4000, height: 3000 }, 0.4, 20);
    const shown = lineOnScreen(plate, placing);
    for (const [x, y] of [
      [1200, 500],
      [2900, 1300],
      [1700, 900],
    ]) {
      const onPlate = plate.nx * x + plate.ny * y - plate.d;
      const [sx, sy] = toScreen(placing, x, y);
      expect(shown.nx * sx + shown.ny * sy - shown.d).toBeCloseTo(onPlate * placing.scale, 6);
    }
  });
});

describe('the scale bar', () => {
  test.each([
    [10, '10\u202fmm', 100],
    [7, '20\u202fmm', 140],
    [400, '200\u202fµm', 80],
    [2000, '50\u202fµm', 100],
    [0.5, '200\u202fmm', 100],
  ])('at %d CSS pixels a millimetre is %s long', (perMillimetre, label, pixels) => {
    const bar = scaleBar(perMillimetre);
    expect(bar?.label).toBe(label);
    expect(bar?.pixels).toBeCloseTo(pixels, 6);
  });

  test('is not shown when the scale is not known', () => {
    expect(scaleBar(null)).toBeNull();
    expect(scaleBar(0)).toBeNull();
  });
});

describe('a measured length', () => {
  test('adds the relative uncertainties in squares', () => {
    // 400 px at 40 px/mm: 10 mm. Scale 0.1/40 of it 0.025 mm, pointing 1/40 mm: 0.03536 mm.
    const length = measuredLength(400, 1, 40, 0.1);
    expect(length.millimetres).toBe(10);
    expect(length.uncertainty).toBeCloseTo(0.0353553, 6);
    expect(lengthWords(length)).toBe('10.000\u202fmm ± 0.035\u202fmm (standard uncertainty)');
  });

  test('without an uncertainty of the scale says so', () => {
    expect(lengthWords(measuredLength(400, 1, 40, null))).toBe(
      '10\u202fmm; the uncertainty of the scale is not known',
    );
  });
});

test('addresses of whole pictures are those of the image service', () => {
  expect(wholePicture('/a/views/n', { width: 500, height: 375 })).toBe(
    '/a/views/n/full/500,375/0/default.jpg',
  );
  expect(wholePicture('/a/views/n', null)).toBe('/a/views/n/full/max/0/default.jpg');
});

test('the small picture is the smallest that is large enough, or the largest there is', () => {
  const sizes = [250, 500, 1000].map((width) => ({ width, height: width / 2 }));
  expect(sizeAtLeast(sizes, 400).width).toBe(500);
  expect(sizeAtLeast(sizes, 4000).width).toBe(1000);
});

test('the drawing of Tilt looks at the eye when the plate stands upright', () => {
  expect(mirrorRay(0)).toBe(`M${section.x} ${section.y}L${section.x - section.reach + 5}.00 92.00`);
  expect(brightArc({ surround: 0, bright: 1, from: 0, to: 90, spread: 1 })).toBe(
    'M34.00 92.00A84 84 0 0 1 118.00 8.00',
  );
});
