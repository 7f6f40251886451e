import { describe, expect, test } from 'vitest';
import { lampFromAbove, lampFromSide, type Stroke } from '../../src/components/setup-drawing.ts';

const middle = ({ x1, y1, x2, y2 }: Stroke) => ({ x: (x1 + x2) / 2, y: (y1 + y2) / 2 });
const slope = ({ x1, y1, x2, y2 }: Stroke) => ({ x: x2 - x1, y: y2 - y1 });

/** Bearing is clockwise from the plate's top edge (src/imaging/conventions.ts); y runs down. */
describe('a lamp from above', () => {
  test.each([
    [0, 0, -1],
    [90, 1, 0],
    [180, 0, 1],
    [270, -1, 0],
  ])('at bearing %i stands on its side of the plate', (bearing, x, y) => {
    const { face } = lampFromAbove({ bearing, height: 0 }, 6);
    expect(Math.sign(Math.round(middle(face).x))).toBe(x);
    expect(Math.sign(Math.round(middle(face).y))).toBe(y);
  });

  test('turns its face to the plate', () => {
    const { face } = lampFromAbove({ bearing: 310, height: 45 }, 6);
    const [at, along] = [middle(face), slope(face)];
    expect(Math.abs(at.x * along.x + at.y * along.y)).toBeLessThan(4);
  });

  test('overhead still stands beside the plate, which it would hide', () => {
    const { x, y } = middle(lampFromAbove({ bearing: 45, height: 90 }, 6).face);
    expect(Math.hypot(x, y)).toBeGreaterThan(30);
  });
});

describe('a lamp from the side', () => {
  test('stands on the left when its bearing is in the left half', () => {
    expect(middle(lampFromSide({ bearing: 310, height: 45 }, 6).face).x).toBeLessThan(0);
    expect(middle(lampFromSide({ bearing: 50, height: 45 }, 6).face).x).toBeGreaterThan(0);
  });

  test('lies at the plate’s level at height 0 and over its middle at 90', () => {
    expect(middle(lampFromSide({ bearing: 90, height: 0 }, 6).face).y).toBeCloseTo(0);
    expect(middle(lampFromSide({ bearing: 90, height: 90 }, 6).face).x).toBeCloseTo(0);
  });

  test('shows its height as the angle above the plate', () => {
    const { x, y } = middle(lampFromSide({ bearing: 90, height: 12 }, 6).face);
    expect((Math.atan2(-y, x) * 180) / Math.PI).toBeCloseTo(12, 0);
  });
});
