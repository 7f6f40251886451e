import { describe, expect, test } from 'vitest';
import type { RegistrationCode } from '../../src/imaging/registration/judge.ts';
import { registrationFinding } from '../../src/pipeline/registration-finding.ts';

const about = {
  plate: 'quay',
  capture: 'axial',
  file: 'captures/axial.tif',
  base: 'normal',
  reason: 'Only 9 of 80 tiles agree; at least 20 are needed.',
};

const say = (code: RegistrationCode, measured: number) =>
  registrationFinding(
    { code, measured, quantity: 'share of tiles that agree', expected: 0.25 },
    about,
  );

describe('registrationFinding', () => {
  test.each([
    [
      'mirrored',
      'Capture "axial" lies mirrored against the base "normal"; it is shown the way the base lies.',
    ],
    [
      'half-turned',
      'Capture "axial" lies upside down against the base "normal"; it is shown the way the base lies.',
    ],
    [
      'mirrored-and-half-turned',
      'Capture "axial" lies mirrored and upside down against the base "normal"; it is shown the way the base lies.',
    ],
    [
      'another-plate',
      'Nothing in capture "axial" was found in the base "normal" (4 % of the tiles agree, as by chance); it is shown alone.',
    ],
    [
      'not-registered',
      'Capture "axial" could not be aligned to the base "normal" and is shown alone. Only 9 of 80 tiles agree; at least 20 are needed.',
    ],
    [
      'readings-not-opposite',
      'Captures "axial" and "normal" are recorded as a positive and a negative, but their tones run the same way.',
    ],
    [
      'lens-changed',
      'Between capture "axial" and the base "normal" focus or lens changed: a radial correction of 0.0 px at the corners was needed to lay them on each other.',
    ],
  ] as const)('%s is a sentence that names both captures', (code, message) => {
    expect(say(code, 0.04)).toMatchObject({
      level: code === 'lens-changed' ? 'note' : 'warning',
      plate: 'quay',
      capture: 'axial',
      file: 'captures/axial.tif',
      code,
      message,
    });
    expect(say(code, 0.04).remedy).not.toBe('');
  });

  test('carries the figure that it rests on', () => {
    expect(say('another-plate', 0.0412345).measured).toEqual({
      value: 0.0412,
      unit: 'share of tiles that agree',
      expected: 'at least 0.25',
    });
  });
});
