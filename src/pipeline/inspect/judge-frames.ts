/** Frames that a set should have and has not: holes in a numbered series, in a grid, in a bracket. */
import { stopsBetween } from '../../imaging/inspect/bracket-steps.ts';
import { emptyCells } from '../../imaging/mosaic/grid.ts';
import { about, said, type InspectedSitting, type Judge } from './inspected-sitting.ts';
import type { CaptureRecord } from '../../records/sitting.ts';

export const judgeFrames: Judge = (sitting) =>
  sitting.captures.flatMap(({ record }) => {
    if (record.kind === 'mosaic') return gridHoles(sitting, record);
    const hole = numberHole(record) ?? (record.kind === 'bracket' ? bracketHole(record) : null);
    return hole === null ? [] : [missing(sitting, record.id, hole)];
  });

function missing(sitting: InspectedSitting, id: string, hole: string) {
  return about(sitting, id, null, {
    level: 'warning',
    code: 'missing-frame',
    message: `A frame of "${id}" seems to be missing: ${hole}.`,
    remedy:
      'Look for the file on the camera’s card. If it was left out on purpose, rename the files without a gap.',
  });
}

/** Frames named `x-01`, `x-02`, `x-04`: the number that nobody has. */
function numberHole({ frames = [] }: CaptureRecord): string | null {
  const numbered = frames.map(({ file }) => /^(.*?)(\d+)(\.[^.]+)$/.exec(file));
  const [first] = numbered;
  if (!first || numbered.some((m) => !m || m[1] !== first[1])) return null;
  const numbers = numbered.map((m) => Number(m?.[2])).sort((a, b) => a - b);
  const steps = numbers.slice(1).map((n, k) => n - numbers[k]);
  // Two frames make no series, and a series may count by two: only a lone jump is a hole.
  const usual = Math.min(...steps);
  const jumps = steps.flatMap((step, k) => (step > usual ? [k] : []));
  if (numbers.length < 3 || jumps.length !== 1 || steps[jumps[0]] > 3 * usual) return null;
  const number = String(numbers[jumps[0]] + usual).padStart(first[2].length, '0');
  return `there is no ${first[1]}${number}${first[3]}`;
}

/** The places in a mosaic's grid that no frame fills, one finding each; whole first rows in one. */
function gridHoles(sitting: InspectedSitting, { id, frames = [] }: CaptureRecord) {
  const cells = frames.flatMap(({ row, column }) =>
    row === undefined || column === undefined ? [] : [{ row, column }],
  );
  if (cells.length < frames.length) return [];
  const places = emptyCells(cells).map(({ row, column }) => `for row ${row}, column ${column}`);
  return [...missingStart(cells), ...places].map((where) =>
    about(sitting, id, null, {
      level: 'warning',
      code: 'mosaic-tile-missing',
      message: `The mosaic "${id}" has no close-up ${where}; the place is black where no neighbour reaches it.`,
      remedy: 'Photograph that place, or correct the rows and columns of the frames.',
    }),
  );
}

/** Rows above and columns left of all close-ups: counting begins with 0 at the top left. */
function missingStart(cells: readonly { row: number; column: number }[]): string[] {
  const rows = Math.min(...cells.map(({ row }) => row));
  const columns = Math.min(...cells.map(({ column }) => column));
  // Who counts from 1 does so both ways, and nothing is missing.
  if (rows === 1 && columns === 1) return [];
  const named = (what: string, count: number): string[] =>
    count === 0 ? [] : [count === 1 ? `in ${what} 0` : `in ${what}s 0 to ${count - 1}`];
  return [...named('row', rows), ...named('column', columns)];
}

/** One step of a bracket that is twice the others. */
function bracketHole({ frames = [] }: CaptureRecord): string | null {
  const seconds = frames.flatMap((f) => f.seconds ?? []).sort((a, b) => a - b);
  if (seconds.length !== frames.length || seconds.length < 4) return null;
  const steps = seconds.slice(1).map((s, k) => stopsBetween(seconds[k], s));
  const usual = Math.min(...steps);
  const wide = steps.flatMap((step, k) => (step > 1.5 * usual ? [k] : []));
  if (wide.length !== 1 || Math.abs(steps[wide[0]] - 2 * usual) > 0.3) return null;
  const [from, to] = [seconds[wide[0]], seconds[wide[0] + 1]];
  return `between ${said(from)} s and ${said(to)} s lie ${said(steps[wide[0]])} stops, and ${said(usual)} between the others`;
}
