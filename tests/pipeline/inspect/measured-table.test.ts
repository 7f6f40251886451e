import { expect, test } from 'vitest';
import { measuredTable } from '../../../src/pipeline/inspect/measured-table.ts';

test('the terminal says of each capture what its page says, with standing and edition', () => {
  const inspection = {
    measurements: [
      {
        quantity: 'resolution',
        label: 'Pixels per inch of plate',
        value: 1016,
        uncertainty: 2.5,
        unit: 'ppi',
        standing: 'within the 4-star figure for resolution (at least 600 ppi)',
        edition: 'FADGI 2016, Prints and Photographs',
        from: 'the stated scale',
      },
      {
        quantity: 'edge-blur',
        label: 'Blur of the sharpest edges',
        value: 0.914,
        uncertainty: null,
        unit: 'px',
        standing: null,
        edition: null,
        from: '80 edges',
      },
    ],
    maps: [],
    outline: null,
    flatField: null,
  };
  const registered = {
    state: 'registered' as const,
    homography: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    radial: null,
    boundPixels: 0.12,
    boundMicrometres: 3,
    lay: 'as-is' as const,
    polarity: 'opposite' as const,
    method: 'fast',
    tilesAgreed: 60,
    tilesTried: 63,
    residual: { columns: 1, rows: 1, pixels: [0.1] },
  };
  const table = measuredTable(
    { 'sitting/normal': inspection, 'sitting/axial': null },
    { 'sitting/normal': { state: 'base' }, 'sitting/axial': registered },
  );
  expect(table.split('\n')).toEqual([
    '  sitting/normal',
    '    Pixels per inch of plate    1016 ± 2.5 ppi  within the 4-star figure for resolution (at least 600 ppi) [FADGI 2016, Prints and Photographs]',
    '    Blur of the sharpest edges  0.91 px',
    '  sitting/axial',
    '    Register with the base  within 0.12 px, 3 µm  60 of 63 patches agreed',
  ]);
});
