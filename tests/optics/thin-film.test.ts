import { describe, expect, test } from 'vitest';
import { coatedReflectance } from '../../src/optics/thin-film.ts';

describe('silver under a film', () => {
  const clear = { n: 2.07, k: 0 };
  const dim = { n: 2.2, k: 0.25 };
  const thicknesses = [0, 25, 50, 100, 200];
  // Characteristic matrices, a different road to the same physics:
  // scripts/reference/coated-silver.py, NumPy 1.24.2.
  test.each([
    [clear, 443, { n: 0.04, k: 2.462 }, [0.977601, 0.939511, 0.967977, 0.981499, 0.983655]],
    [clear, 549, { n: 0.06, k: 3.586 }, [0.982836, 0.963976, 0.94506, 0.985427, 0.968848]],
    [dim, 443, { n: 0.04, k: 2.462 }, [0.977601, 0.275337, 0.385669, 0.409057, 0.238101]],
    [dim, 549, { n: 0.06, k: 3.586 }, [0.982836, 0.611399, 0.175823, 0.540471, 0.220297]],
    [dim, 617, { n: 0.06, k: 4.152 }, [0.98693, 0.743743, 0.182399, 0.498163, 0.026253]],
  ])('film %o at %f nm agrees with characteristic matrices', (film, wavelength, silver, wanted) => {
    thicknesses.forEach((thickness, i) => {
      expect(coatedReflectance(film, silver, thickness, wavelength)).toBeCloseTo(wanted[i], 6);
    });
  });

  test('a clear half-wave film is not there', () => {
    const silver = { n: 0.06, k: 3.586 };
    const bare = coatedReflectance(clear, silver, 0, 549);
    expect(coatedReflectance(clear, silver, 549 / (2 * 2.07), 549)).toBeCloseTo(bare, 10);
    expect(coatedReflectance(clear, silver, 549 / (4 * 2.07), 549)).not.toBeCloseTo(bare, 3);
  });
});
