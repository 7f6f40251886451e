import { describe, expect, test } from 'vitest';
import { brewsterAngle, fresnelReflectance, unpolarised } from '../../src/optics/fresnel.ts';

// Values from the project's check table (Fresnel's equations in double precision, Smith, Modern
// Optical Engineering 4e, eq. 11.1): index, Rs, Rp and mean at 45 degrees, Brewster's angle.
const table = [
  [1.47, 0.084931, 0.007213, 0.046072, 55.773638],
  [1.5, 0.092013, 0.008466, 0.05024, 56.309932],
  [1.5168, 0.095978, 0.009212, 0.052595, 56.603826],
  [1.52, 0.096733, 0.009357, 0.053045, 56.659293],
] as const;

describe('one face of glass', () => {
  test.each(table)(
    'index %f reflects what the table says at 45 degrees',
    (n, s, p, mean, angle) => {
      const face = fresnelReflectance(n, 45);
      expect(face.s).toBeCloseTo(s, 6);
      expect(face.p).toBeCloseTo(p, 6);
      expect(unpolarised(face)).toBeCloseTo(mean, 6);
      expect(brewsterAngle(n)).toBeCloseTo(angle, 6);
      expect(fresnelReflectance(n, angle).p).toBeLessThan(1e-14);
    },
  );

  test('at 45 degrees Rp is the square of Rs, whatever the index', () => {
    for (const n of [1.2, 1.52, 1.9, 2.6]) {
      const { s, p } = fresnelReflectance(n, 45);
      expect(p).toBeCloseTo(s * s, 12);
    }
  });

  test('at grazing incidence everything is reflected, head-on ((n-1)/(n+1))^2', () => {
    expect(unpolarised(fresnelReflectance(1.5, 90))).toBeCloseTo(1, 12);
    expect(fresnelReflectance(1.5, 0).s).toBeCloseTo(0.04, 12);
  });

  test('says what is wrong with an angle', () => {
    expect(() => fresnelReflectance(1.5, 91)).toThrow(
      'The angle of incidence is 91; expected 0 to 90 degrees.',
    );
  });
});
