import { describe, expect, test } from 'vitest';
import {
  angleWords,
  areaWords,
  measuredAngle,
  measuredArea,
  polygonArea,
} from '../../../src/viewer/measure/area-measure.ts';
import { lineProfile } from '../../../src/viewer/measure/line-profile.ts';
import '../english.ts';

describe('area', () => {
  test('of a right triangle is half its legs, in either direction', () => {
    const corners = [
      [0, 0],
      [4, 0],
      [0, 3],
    ] as const;
    expect(polygonArea(corners)).toBe(6);
    expect(polygonArea(corners.toReversed())).toBe(6);
  });

  test('carries twice the relative uncertainty of the scale', () => {
    // A square of 400 px at 40 px/mm: 100 mm2. 0.4 in 40 is 1 %, so 2 % of 100 mm2.
    const square = [
      [0, 0],
      [400, 0],
      [400, 400],
      [0, 400],
    ] as const;
    const { squareMillimetres, uncertainty } = measuredArea(square, 0, 40, 0.4);
    expect(squareMillimetres).toBe(100);
    expect(uncertainty).toBeCloseTo(2, 9);
    expect(areaWords({ squareMillimetres, uncertainty })).toBe(
      '100.0\u202fmm² ± 2.0\u202fmm² (standard uncertainty)',
    );
  });

  test('agrees with a simulation of pressing beside the corners', () => {
    // NumPy 2.4.6: 200,000 squares of side 100, each coordinate off by a normal deviate of 1:
    //   r = np.random.default_rng(1); p = np.array([[0,0],[100,0],[100,100],[0,100]]) +
    //   r.normal(size=(200000,4,2)); x, y = p[...,0], p[...,1]
    //   a = .5*abs((x*np.roll(y,-1,1)-y*np.roll(x,-1,1)).sum(1)); a.std()  -> 141.19
    const square = [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ] as const;
    const { uncertainty } = measuredArea(square, 1, 1, 0);
    expect(uncertainty).toBeCloseTo(141.19, 0);
  });

  test('an unknown uncertainty of the scale is said, not guessed', () => {
    expect(areaWords({ squareMillimetres: 12.345, uncertainty: null })).toMatch(/not known/);
  });
});

describe('angle', () => {
  test('between the sides of an equilateral triangle is 60 degrees', () => {
    const { degrees } = measuredAngle([100, 0], [0, 0], [50, 50 * Math.sqrt(3)], 1);
    expect(degrees).toBeCloseTo(60, 9);
  });

  test('agrees with a simulation of pressing beside the points', () => {
    // NumPy 2.4.6, as above with points (100,0), (0,0), (0,50):
    //   ang.std() in degrees -> 1.817
    const angle = measuredAngle([100, 0], [0, 0], [0, 50], 1);
    expect(angle.degrees).toBe(90);
    expect(Math.abs(angle.uncertainty / 1.817 - 1)).toBeLessThan(0.01);
    expect(angleWords(angle)).toBe('90.0° ± 1.8° (standard uncertainty)');
  });
});

describe('profile along a line', () => {
  const width = 20;
  const data = Float32Array.from({ length: width * 10 }, (_, i) => (i % width) / 100);
  const plane = { width, height: 10, data };

  test('of a ramp is the ramp, between pixels too', () => {
    const samples = lineProfile(plane, [2.5, 3], [12.5, 3]);
    expect(samples).toHaveLength(11);
    expect(samples[0].luminance).toBeCloseTo(0.025, 6);
    expect(samples[10].luminance).toBeCloseTo(0.125, 6);
    expect(samples[10].along).toBe(10);
  });

  test('beyond the picture holds its edge', () => {
    expect(lineProfile(plane, [25, 3], [30, 3])[0].luminance).toBeCloseTo(0.19, 6);
  });
});
