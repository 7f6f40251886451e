/** Nine rendered close-ups, and what is said when one is absent, two are swapped, one is lighter. */
import { expect, test } from 'vitest';
import { assembleMosaic } from '../../../../src/imaging/mosaic/assemble.ts';
import { startSurvey } from '../../../../src/imaging/mosaic/survey.ts';
import { mosaicFindings } from '../../../../src/pipeline/combine/mosaic/mosaic-findings.ts';
import { reportOf } from '../../../../src/pipeline/combine/mosaic/mosaic-report.ts';
import type { CaptureRecord } from '../../../../src/records/sitting.ts';
import { luminanceOf, renderCloseUps } from '../../../imaging/mosaic/rendered-close-ups.ts';

const shot = renderCloseUps(21, { exposures: { 4: 1.3 }, glints: false });
const capture = { id: 'mosaic' } as CaptureRecord;
// Nothing here is laid on a base.
const plane = { width: 320, height: 320, data: new Uint16Array(320 * 320) };

type Tile = (typeof shot.tiles)[number];

/** What is said of close-ups that are recorded like this, but for the base. */
function said(tiles: readonly Tile[]) {
  const sorted = tiles.toSorted((a, b) => a.row - b.row || a.column - b.column);
  const named = sorted.map((tile) => ({
    ...tile,
    file: `close-up-${shot.tiles.findIndex(({ data }) => data === tile.data)}.tif`,
    sha256: '0'.repeat(64),
  }));
  const surveyor = startSurvey(named, shot.overlap);
  for (const [i, { data, width, height }] of named.entries()) {
    surveyor.add(i, luminanceOf(data, width, height));
  }
  const survey = surveyor.finish();
  const assembly = assembleMosaic(named, survey, { plane, pixelsPerMillimetre: null });
  const report = reportOf(survey, assembly, null);
  const findings = mosaicFindings('plate', capture, named, report);
  return findings.filter(({ code }) => code !== 'mosaic-not-on-base');
}

test('nine close-ups in their places: only the one that is 30 % lighter is told of', () => {
  const found = said(shot.tiles);
  expect(found.map(({ code, file }) => [code, file])).toEqual([
    ['mosaic-exposure', 'captures/close-up-4.tif'],
  ]);
  // Against the mean of the nine, 1.3 is 1.3 / (1.3)^(1/9): 26 %.
  expect(found[0].measured?.value).toBeGreaterThan(20);
  expect(found[0].measured?.value).toBeLessThan(32);
});

test('two close-ups in each other’s place are named with the places in which they fit', () => {
  const swap: Readonly<Record<number, number>> = { 2: 6, 6: 2 };
  const swapped = shot.tiles.map((tile, i) => {
    const { row, column } = shot.tiles[swap[i] ?? i];
    return { ...tile, row, column };
  });
  const found = said(swapped).filter(({ code }) => code === 'mosaic-tile-misplaced');
  expect(found.map(({ file }) => file).sort()).toEqual([
    'captures/close-up-2.tif',
    'captures/close-up-6.tif',
  ]);
  const one = found.find(({ file }) => file === 'captures/close-up-2.tif');
  expect(one?.message).toContain('is recorded at row 2, column 0, but fits at row 0, column 2');
});

test('a close-up of something else fits nowhere, and the others are joined without it', () => {
  const other = renderCloseUps(99, { columns: 2, rows: 1 });
  const strange = shot.tiles.map((tile, i) =>
    i === 8 ? { ...tile, data: other.tiles[0].data } : tile,
  );
  const found = said(strange).filter(({ code }) => code === 'mosaic-tile-unplaced');
  expect(found).toHaveLength(1);
  expect(found[0].message).toContain('recorded at row 2, column 2, fits none of its neighbours');
});
