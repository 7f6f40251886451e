/**
 * The shape of the surface: slow undulation of the sheet, dents, the rounded edge, and the
 * polishing lines that run across the plate.
 *
 * The lines are too fine for a pixel. They are kept as what they do: a share of the mirror's
 * light that is spread across their direction, more in one streak and less in the next.
 */
import { fillSlowly, smoothNoise } from './noise.ts';
import type { PlateRow } from './plate-row.ts';
import type { Dent, Plate } from './plate.ts';
import { seedOf } from './seeded.ts';

/** Features of the undulation are about this long, mm. */
const undulationLength = 16;

/** Root mean square slope of the lattice noise, per step: measured, checked by a test. */
export const noiseSlope = 0.876;

/** The streaks' direction leans by this much, rise per run: no hand buffs exactly level. */
const lean = 0.012;

const slowStep = 16;
const edgeRound = 0.35;

/** Fill in slopes. Needs the places of the row. */
export function reliefRow(line: PlateRow, plate: Plate): void {
  const seed = seedOf('undulation', plate.seed);
  const strength = Math.tan((plate.undulation * Math.PI) / 180) * undulationLength;
  const scale = strength / noiseSlope;
  const near = 0.05;
  const height = (x: number, y: number) =>
    smoothNoise(x / undulationLength, y / undulationLength, seed);
  fillSlowly(line.slopeX, slowStep, (i) => {
    const x = line.x[i];
    const y = line.y[i];
    return (scale * (height(x + near, y) - height(x - near, y))) / (2 * near);
  });
  fillSlowly(line.slopeY, slowStep, (i) => {
    const x = line.x[i];
    const y = line.y[i];
    return (scale * (height(x, y + near) - height(x, y - near))) / (2 * near);
  });
  for (const dent of plate.dents) dentRow(line, dent);
  roundEdges(line, plate);
}

function dentRow(line: PlateRow, dent: Dent): void {
  const far = 4 * dent.radius;
  const square = dent.radius * dent.radius;
  const lean = Math.abs(line.y[line.length - 1] - line.y[0]);
  if (Math.abs(line.y[line.length >> 1] - dent.y) > far + lean) return;
  for (let i = 0; i < line.length; i += 1) {
    const dx = line.x[i] - dent.x;
    const dy = line.y[i] - dent.y;
    if (Math.abs(dx) > far || Math.abs(dy) > far) continue;
    const fall = (-dent.depth / square) * Math.exp((-0.5 * (dx * dx + dy * dy)) / square);
    line.slopeX[i] += fall * dx;
    line.slopeY[i] += fall * dy;
  }
}

/** The rounded rim of the sheet; what lies beyond the plate is cloth, and level. */
function roundEdges(line: PlateRow, plate: Plate): void {
  const fall = (beyond: number) =>
    beyond <= 0
      ? 0
      : beyond >= edgeRound
        ? Number.NaN
        : (beyond * beyond) / (edgeRound * edgeRound);
  const levelX = plate.width / 2 - edgeRound;
  const levelY = plate.height / 2 - edgeRound;
  for (let i = 0; i < line.length; i += 1) {
    const x = line.x[i];
    const y = line.y[i];
    if (x < levelX && x > -levelX && y < levelY && y > -levelY) continue;
    const fallX = fall(Math.abs(x) - plate.width / 2 + edgeRound);
    const fallY = fall(Math.abs(y) - plate.height / 2 + edgeRound);
    if (Number.isNaN(fallX) || Number.isNaN(fallY)) {
      line.slopeX[i] = 0;
      line.slopeY[i] = 0;
    } else {
      line.slopeX[i] -= Math.sign(x) * fallX;
      line.slopeY[i] -= Math.sign(y) * fallY;
    }
  }
}

/** Fill in the share of light that polishing lines spread. Needs the places of the row. */
export function polishRow(line: PlateRow, plate: Plate): void {
  const seed = seedOf('polish', plate.seed);
  fillSlowly(line.gloss, slowStep, (i) => {
    const x = line.x[i];
    const across = line.y[i] + lean * x;
    const streaks =
      0.5 * smoothNoise(x * 0.03, across * 9.5, seed) +
      0.35 * smoothNoise(x * 0.045 + 3, across * 4.1, seed + 1) +
      0.3 * smoothNoise(x * 0.02 + 9, across * 1.3, seed + 2);
    return plate.polish * Math.max(0, 1 + streaks);
  });
}

/** Fill in the share of each pixel that lies on the plate; corners are cut as plates' corners are. */
export function insideRow(line: PlateRow, plate: Plate, pixelsPerMillimetre: number): void {
  const cut =
    Math.min(plate.width, plate.height) / 2 + Math.max(plate.width, plate.height) / 2 - 1.6;
  for (let i = 0; i < line.length; i += 1) {
    const x = Math.abs(line.x[i]);
    const y = Math.abs(line.y[i]);
    const depth = Math.min(plate.width / 2 - x, plate.height / 2 - y, (cut - x - y) / Math.SQRT2);
    line.inside[i] = Math.min(1, Math.max(0, depth * pixelsPerMillimetre + 0.5));
  }
}
