import { expect, test } from 'vitest';
import { doseOf, exposureDose, luxHours } from '../../src/optics/light-dose.ts';

test('a meter reading of EV 0 at ISO 100 stands for 2.5 lux', () => {
  // Check values, 7.3: C 250, EV 0 (f/1, 1 s) at ISO 100 is 2.5 lx.
  expect(exposureDose(1, 100, 0)).toBeCloseTo(2.5, 9);
});

test('f/8 at ISO 100 takes 160 lux seconds from afar, four times that at life size', () => {
  expect(exposureDose(8, 100, 0)).toBeCloseTo(160, 9);
  expect(exposureDose(8, 100, 1)).toBeCloseTo(640, 9);
  expect(exposureDose(8, 100, 0, 2)).toBeCloseTo(640, 9);
});

test('400 lux hours are a day of eight hours at 50 lux', () => {
  const parts = [
    { name: 'focusing', luxHours: 399 },
    { name: 'frames', luxHours: luxHours(3600) },
  ];
  expect(doseOf(parts)).toEqual({ luxHours: 400, displayHours: 8 });
});
