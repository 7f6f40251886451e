/**
 * What joining a mosaic says about its close-ups, as sentences that a technician can act on. A
 * place of the grid without a close-up is told before, by inspection.
 */
import { finding, type Finding } from '../../../records/finding.ts';
import type { CaptureRecord } from '../../../records/sitting.ts';
import type { MosaicReport, ReportTile } from './mosaic-report.ts';

/** A gain this far from 1 is told of. Own choice; steady lamps repeat to one or two per cent. */
const steadyExposure = 0.15;

export function mosaicFindings(
  plate: string,
  capture: CaptureRecord,
  tiles: readonly ReportTile[],
  report: MosaicReport,
): Finding[] {
  const say = (parts: Pick<Finding, 'level' | 'code' | 'message' | 'remedy'> & Partial<Finding>) =>
    finding({ plate, capture: capture.id, ...parts });
  const place = ({ row, column }: { row: number; column: number }) =>
    `row ${row}, column ${column}`;
  if (!report.ok) {
    const none = say({
      level: 'warning',
      code: 'mosaic-not-joined',
      message: `No two close-ups of the mosaic "${capture.id}" were found to overlap as the grid says; they are shown one by one.`,
      remedy:
        'Check the rows and columns of the frames: rows run from the top, columns from the left, as the base lies.',
    });
    return [none];
  }
  const lost = report.lost.map(({ tile, place: found }) => {
    const { file, row, column } = tiles[tile];
    const beside = found && tiles[found.beside].file;
    return say({
      level: 'warning',
      file: `captures/${file}`,
      code: found ? 'mosaic-tile-misplaced' : 'mosaic-tile-unplaced',
      message: found
        ? `${file} is recorded at ${place({ row, column })}, but fits at ${place(found)}, beside ${beside}; the mosaic was made without it.`
        : `${file}, recorded at ${place({ row, column })}, fits none of its neighbours; the mosaic was made without it.`,
      remedy: found
        ? 'Correct its row and column in the sitting; two names may have been swapped.'
        : 'Check that it shows this plate at the same scale and overlaps its neighbours; photograph it again with more overlap.',
    });
  });
  const members = new Set(report.members);
  const apart = report.apart
    .filter(({ first, second }) => members.has(first) && members.has(second))
    .map(({ first, second, reason }) =>
      say({
        level: 'note',
        code: 'mosaic-pair-apart',
        message: `${tiles[first].file} and ${tiles[second].file} could not be compared directly. ${reason} Both were placed by their other neighbours.`,
        remedy: 'Overlap them more, or let the overlap fall where the plate shows something.',
      }),
    );
  const jumps = report.members.flatMap((tile, k) => {
    const gain = report.gains[k];
    if (Math.abs(gain - 1) <= steadyExposure) return [];
    const { file } = tiles[tile];
    const percent = Math.round(100 * Math.abs(1 / gain - 1));
    return say({
      level: 'warning',
      file: `captures/${file}`,
      code: 'mosaic-exposure',
      message: `${file} is ${percent} % ${gain < 1 ? 'lighter' : 'darker'} than the mean of the close-ups where they overlap; it was balanced.`,
      remedy: 'Keep exposure and lamp as they are for all close-ups of a mosaic.',
      measured: {
        value: Number((100 * (1 / gain - 1)).toFixed(1)),
        unit: '%',
        expected: `within ${100 * steadyExposure} %`,
      },
    });
  });
  const base = report.hung.ok
    ? []
    : say({
        level: 'warning',
        code: 'mosaic-not-on-base',
        message: `The mosaic "${capture.id}" was joined but could not be laid on the base: ${report.hung.reason}`,
        remedy:
          'Let the close-ups cover what the base shows, or make the base the mosaic’s own light.',
      });
  return [...lost, ...apart, ...jumps, ...(Array.isArray(base) ? base : [base])];
}
