import { describe, expect, test } from 'vitest';
import {
  outlineFrom,
  outlineRegion,
  outlineSvg,
  rectangleBetween,
} from '../../../src/viewer/spots/spot-shape.ts';

const outline = [
  [100, 200],
  [340, 210],
  [220, 500],
] as const;

test('a rectangle between two presses does not depend on their order', () => {
  const wanted = { x: 10, y: 20, width: 30, height: 40 };
  expect(rectangleBetween([10, 20], [40, 60])).toEqual(wanted);
  expect(rectangleBetween([40, 60], [10, 20])).toEqual(wanted);
  expect(rectangleBetween([40, 20], [10, 60])).toEqual(wanted);
});

describe('an outline', () => {
  test('goes through its SVG unchanged, within its own rectangle', () => {
    expect(outlineFrom(outlineSvg(outline))).toEqual(outline);
    expect(outlineRegion(outline)).toEqual({ x: 100, y: 200, width: 240, height: 300 });
  });

  test.each([
    '<svg><path d="M0 0L1 1"/></svg>',
    '<svg><polygon points="1,2 3,4"/></svg>',
    '<svg><polygon points="1,2 3,4 5"/></svg>',
    '<svg><polygon points="1,2 3,4 . ,5"/></svg>',
  ])('is not read from %s', (svg) => {
    expect(outlineFrom(svg)).toBeNull();
  });
});
