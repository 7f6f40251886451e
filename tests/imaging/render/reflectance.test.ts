import { expect, test } from 'vitest';
import { emptyRow } from '../../../src/imaging/render/plate-row.ts';
import { emptyReflectances, reflectRow } from '../../../src/imaging/render/reflectance.ts';
import { numbersFrom } from '../../../src/imaging/render/seeded.ts';
import { filmColours } from '../../../src/imaging/render/silver.ts';
import { standInPlate } from '../../../src/imaging/render/test-pair.ts';

test.each(['silver', 'glass'] as const)(
  'no pixel of %s gives back, mirrors and lets through more light than it got',
  (support) => {
    const next = numbersFrom(5);
    const line = emptyRow(20_000);
    for (let i = 0; i < line.length; i += 1) {
      line.inside[i] = next();
      line.coverage[i] = 0.98 * next();
      line.film[i] = 400 * next();
      line.scratch[i] = next() < 0.5 ? next() : 0;
      line.dust[i] = next() < 0.5 ? next() : 0;
      line.tint[i] = next() < 0.5 ? next() : 0;
      for (const channel of line.tintColour) channel[i] = next();
    }
    const out = emptyReflectances(line.length);
    reflectRow(out, line, { ...standInPlate(1), support }, filmColours());
    let most = 0;
    let least = 1;
    for (let i = 0; i < line.length; i += 1) {
      for (let c = 0; c < 3; c += 1) {
        const through = support === 'glass' ? out.through[i] * 0.5 : 0;
        most = Math.max(most, out.diffuse[c][i] + out.mirror[c][i], through);
        least = Math.min(least, out.diffuse[c][i], out.mirror[c][i]);
      }
    }
    expect(most).toBeLessThanOrEqual(1);
    expect(least).toBeGreaterThanOrEqual(0);
  },
);

test('highlights scatter and shadows mirror', () => {
  const line = emptyRow(2);
  line.inside.fill(1);
  line.coverage[0] = 0.7;
  line.coverage[1] = 0.01;
  const out = emptyReflectances(2);
  reflectRow(out, line, standInPlate(1), filmColours());
  expect(out.diffuse[1][0]).toBeGreaterThan(20 * out.diffuse[1][1]);
  expect(out.mirror[1][1]).toBeGreaterThan(8 * out.mirror[1][0]);
});
