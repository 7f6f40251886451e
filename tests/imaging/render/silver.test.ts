import { describe, expect, test } from 'vitest';
import {
  colourMatching,
  filmColours,
  grownFilmColours,
  reflectedColour,
  silverIndex,
} from '../../../src/imaging/render/silver.ts';
import { coatedReflectance } from '../../../src/optics/thin-film.ts';

describe('the colour of silver', () => {
  test('the fitted matching functions meet CIE 1931 near their peaks', () => {
    // CIE 1931 2 degree table at 555, 600 and 450 nm: y 1.0000, x 1.0622, z 1.7721. The fit's
    // authors state errors of a few per cent of the peak.
    expect(colourMatching(555)[1]).toBeCloseTo(1.0, 1);
    expect(Math.abs(colourMatching(600)[0] - 1.0622)).toBeLessThan(0.03);
    expect(Math.abs(colourMatching(450)[2] - 1.7721)).toBeLessThan(0.06);
  });

  test('their integrals are equal within 1 %, so that equal energy is white', () => {
    const sum = [0, 0, 0];
    for (let w = 380; w <= 780; w += 1) colourMatching(w).forEach((v, c) => (sum[c] += v));
    // CIE: each 106.86 at 1 nm steps (x, y and z agree to four figures).
    for (const value of sum) expect(Math.abs(value / 106.86 - 1)).toBeLessThan(0.01);
  });

  test('a perfect reflector is white, half of it is half', () => {
    for (const value of reflectedColour(() => 1)) expect(value).toBeCloseTo(1, 5);
    for (const value of reflectedColour(() => 0.5)) expect(value).toBeCloseTo(0.5, 5);
  });

  test('silver at a row of the table has the row of the table', () => {
    const { n, k } = silverIndex(1239.841984 / 2.26);
    expect(n).toBeCloseTo(0.06, 9);
    expect(k).toBeCloseTo(3.586, 9);
  });

  test('bare silver is bright and a little warm', () => {
    const [r, g, b] = filmColours();
    expect(r).toBeGreaterThan(g);
    expect(g).toBeGreaterThan(b);
    expect(b).toBeGreaterThan(0.95);
    expect(r).toBeLessThanOrEqual(1);
  });

  test('the table is the integral of the Airy formula, and 25, 45 and 70 nm are gold, violet and blue', () => {
    const film = { n: 2.2, k: 0.25 };
    const table = filmColours(film);
    const at = (d: number) => [...table.slice(d * 3, d * 3 + 3)];
    const direct = reflectedColour((w) => coatedReflectance(film, silverIndex(w), 70, w));
    direct.forEach((value, c) => {
      expect(at(70)[c]).toBeCloseTo(Math.min(1, Math.max(0, value)), 12);
    });
    const [gold, violet, blue] = [at(25), at(45), at(70)];
    expect(gold[0]).toBeGreaterThan(gold[1]);
    expect(gold[1]).toBeGreaterThan(gold[2]);
    expect(Math.min(violet[0], violet[2])).toBeGreaterThan(violet[1]);
    expect(blue[2]).toBeGreaterThan(blue[1]);
    expect(blue[1]).toBeGreaterThan(blue[0]);
  });

  test('a film that grew unevenly is never more coloured than an even one can be', () => {
    const spread = (table: Float64Array) => {
      let most = 0;
      for (let d = 0; d < 400; d += 1) {
        const rgb = table.slice(d * 3, d * 3 + 3);
        most = Math.max(most, Math.max(...rgb) - Math.min(...rgb));
      }
      return most;
    };
    expect(spread(grownFilmColours())).toBeLessThan(spread(filmColours()));
  });
});
