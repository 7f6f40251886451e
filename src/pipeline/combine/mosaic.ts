/**
 * A mosaic: its close-ups one by one, and the plate that they make together.
 *
 * The joined picture is never written as one file: the store keeps the plan of it (where each
 * tile lies, its gains, its seams), and the tiles of the site are drawn straight from that plan
 * and the captures. It lies in the frame of the base, in register, with as many more pixels as
 * the close-ups have; where it cannot be laid on the base it keeps a frame of its own.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { assembleMosaic } from '../../imaging/mosaic/assemble.ts';
import { startSurvey } from '../../imaging/mosaic/survey.ts';
import { loadLuminance } from '../../raster/load-plane.ts';
import { setupOf, type CaptureRecord } from '../../records/sitting.ts';
import { baseCapture, type AlignedPlate } from '../align.ts';
import type { ContentSitting } from '../content.ts';
import { keyOf } from '../key.ts';
import { plateScale } from '../plate-scale.ts';
import { pictureFiles } from '../read.ts';
import type { StageContext } from '../stage-context.ts';
import { keepFolder } from '../store.ts';
import { captureViews } from './captures.ts';
import { mosaicFindings } from './mosaic/mosaic-findings.ts';
import {
  mosaicReportSchema,
  reportOf,
  type MosaicReport,
  type ReportTile,
} from './mosaic/mosaic-report.ts';
import type { Part, PlannedView } from './part.ts';

/** Raised when the same close-ups would be joined otherwise. */
const mosaicVersion = 2;

export async function mosaicViews(
  plate: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
  context: StageContext,
): Promise<Part> {
  const single = await captureViews(plate, sitting, capture);
  const tiles = gridTiles(plate, capture);
  if (!tiles) return single;
  const { key, folder, report } = await keptReport(plate, capture, tiles, context);
  const findings = mosaicFindings(plate.plate.slug, capture, tiles, report);
  const joined = report.ok ? [joinedView(plate, sitting, capture, tiles, report, key, folder)] : [];
  return { views: [...joined, ...single.views], findings: [...single.findings, ...findings] };
}

/** Tiles row by row; null where a frame has no place in the grid, which was told before. */
function gridTiles(plate: AlignedPlate, capture: CaptureRecord): readonly ReportTile[] | null {
  const tiles: ReportTile[] = [];
  for (const { file, row, column } of capture.frames ?? []) {
    const known = plate.files.get(file);
    if (!known) throw new Error(`${file} was not read`);
    if (row === undefined || column === undefined) return null;
    const { sha256, width, height } = known;
    tiles.push({ file, row, column, width, height, sha256 });
  }
  return tiles.toSorted((a, b) => a.row - b.row || a.column - b.column);
}

async function keptReport(
  plate: AlignedPlate,
  capture: CaptureRecord,
  tiles: readonly ReportTile[],
  context: StageContext,
) {
  const first = plate.plate.sittings[0];
  const base = plate.files.get(pictureFiles(baseCapture(first))[0]);
  if (!base) throw new Error('The base was not read');
  const { pixelsPerMillimetre } = plateScale(plate.plate.record, first.record, plate.scale);
  const overlap = capture.overlap ?? null;
  const key = keyOf({
    version: mosaicVersion,
    tiles: tiles.map((t) => [t.file, t.sha256, t.row, t.column]),
    overlap,
    base: base.sha256,
    pixelsPerMillimetre,
  });
  const captures = join(plate.plate.folder, 'captures');
  const folder = await keepFolder(
    context.store,
    'combine',
    key,
    async (draft) => {
      const options = { scratch: context.store.scratch };
      const surveyor = startSurvey(tiles, overlap);
      for (const [i, { file }] of tiles.entries()) {
        context.progress(`${plate.plate.slug}: joining ${i + 1}/${tiles.length}`);
        surveyor.add(i, await loadLuminance(join(captures, file), options));
      }
      const plane = await loadLuminance(join(captures, base.name), options);
      const survey = surveyor.finish();
      const assembly = assembleMosaic(tiles, survey, { plane, pixelsPerMillimetre });
      const report = reportOf(survey, assembly, pixelsPerMillimetre);
      await writeFile(join(draft, 'mosaic.json'), `${JSON.stringify(report)}\n`);
    },
    context.tally,
  );
  const text = await readFile(join(folder, 'mosaic.json'), 'utf8');
  return { key, folder, report: mosaicReportSchema.parse(JSON.parse(text)) };
}

function joinedView(
  plate: AlignedPlate,
  sitting: ContentSitting,
  capture: CaptureRecord,
  tiles: readonly ReportTile[],
  report: Extract<MosaicReport, { ok: true }>,
  key: string,
  folder: string,
): PlannedView {
  const { plan, members, hung } = report;
  const used = members.map((t) => tiles[t]);
  const round = (value: number, digits: number) => Number(value.toFixed(digits));
  const onBase = hung.ok
    ? `and lies in the frame of the base at ${round(hung.scale, 2)} times its pixels, off by at most ${hung.boundPixels.toFixed(2)} px of the base`
    : 'and keeps a frame of its own, since it could not be laid on the base';
  return {
    id: capture.id,
    sitting: sitting.id,
    captures: [capture.id],
    sources: used.map((t) => t.sha256),
    kind: 'mosaic',
    setupKind: setupOf(sitting.record, capture)?.kind ?? 'other',
    reading: capture.reading,
    path: join(folder, 'mosaic.json'),
    composedFrom: join(plate.plate.folder, 'captures'),
    sha256: key,
    width: plan.width,
    height: plan.height,
    registered: hung.ok,
    warp: null,
    made:
      `${used.length} overlapping close-ups, joined: all were placed at once by ` +
      `${report.points} points that neighbours share, balanced in tone, and cut where they differ least. ` +
      `Each is resampled once, ${onBase}.`,
    caution:
      'Tones were balanced between the close-ups: do not compare brightness across a seam. ' +
      'Use a single close-up for measuring light, and for anything finer than the residual below.',
    step: 'joining a mosaic',
    settings: [
      { name: 'model of each close-up', value: report.model },
      { name: 'overlap', value: capture.overlap ?? 'not recorded; 0.3 assumed' },
      { name: 'half width of a seam, px', value: plan.feather },
      { name: 'tones fade over, px', value: plan.levelReach },
    ],
    figures: [
      figure('residual', 'Median residual of shared points', round(report.residual, 3), 'px'),
      figure('worst-pair', 'Residual of the worst pair', round(report.worstPair, 3), 'px'),
      figure('pairs', 'Pairs that agree', report.agreed, `of ${report.tried}`),
      figure('seam-step', 'Seam step, 95th percentile', round(100 * report.steps.p95, 2), '%'),
      figure('seam-step-largest', 'Seam step, largest', round(100 * report.steps.largest, 2), '%'),
      figure('covered', 'Part of the frame covered', round(100 * report.covered, 1), '%'),
      ...(hung.ok && hung.pixelsPerMillimetre !== null
        ? [figure('scale', 'Scale', round(hung.pixelsPerMillimetre, 2), 'px/mm')]
        : []),
    ],
    layers: [],
    archive: [],
    residual: report.map,
  };
}

function figure(quantity: string, label: string, value: number, unit: string) {
  return { quantity, label, value, unit };
}
