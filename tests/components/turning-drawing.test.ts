/** The lesson's section measured: twice the tilt, and the lights that the eye adds. */
import { expect, test } from 'vitest';
import { turningSection, turningSvg } from '../../src/components/lessons/turning-drawing.ts';
import { reflectedLuminance, roomLight } from '../../src/imaging/tilt.ts';
import { viewer } from '../../src/words/en/viewer.ts';

function angleOf(svg: string, part: string): number {
  const path = new RegExp(
    `data-draw="${part}" d="M([\\d.-]+) ([\\d.-]+)L([\\d.-]+) ([\\d.-]+)"`,
  ).exec(svg);
  const [x0, y0, x1, y1] = (path ?? []).slice(1).map(Number);
  return (Math.atan2(y0 - y1, x0 - x1) * 180) / Math.PI;
}

function width(svg: string, bar: string): number {
  return Number(new RegExp(`data-draw="${bar}"[^>]* width="([\\d.]+)"`).exec(svg)?.[1]);
}

test.each([0, 5, 12.5, 20])(
  'turned by %f degrees, the mirror’s line turns by twice that',
  (tilt) => {
    const svg = turningSvg(tilt, 'window', viewer.turning);
    expect(svg).toContain(`M${turningSection.x} ${turningSection.y}L`);
    expect(angleOf(svg, 'ray')).toBeCloseTo(2 * tilt, 1);
    // The plate's own line: from its upper to its lower end, upright at no tilt.
    expect(Math.abs(angleOf(svg, 'plate'))).toBeCloseTo(90 - tilt, 0);
  },
);

test('the two bars have the proportion of the two lights', () => {
  for (const tilt of [6, 12, 18]) {
    const svg = turningSvg(tilt, 'window', viewer.turning);
    const b = reflectedLuminance(tilt, roomLight.window);
    expect(width(svg, 'b') / width(svg, 'a')).toBeCloseTo(b, 1);
  }
});
