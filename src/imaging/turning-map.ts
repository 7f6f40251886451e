/**
 * Where on a plate, and how evenly, positive turns to negative: the turning point of the plate as
 * a whole and of a coarse grid of fields. On a sealed or tarnished plate it differs from place to
 * place, and one number for all of it would promise more than there is.
 *
 * References
 * - The turning point b/a = (P_h - P_s) / (N_s - N_h): see `tilt.ts`.
 */
import { quantile } from './inspect/quantile.ts';
import type { Plane } from './plane.ts';
import { tonesOf, turningPoint, type Tones } from './tilt.ts';

export interface TurningMap {
  readonly columns: number;
  readonly rows: number;
  /** b / a of each field, row-major; null where it cannot be told. */
  readonly values: readonly (number | null)[];
}

export interface PlateTurning {
  /** b / a of the plate; null with a reason. */
  readonly value: number | null;
  readonly reason: string | null;
  readonly tones: Tones | null;
  readonly map: TurningMap;
  /** Quartiles of the fields; null when fewer than four fields could be told. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** Share of the fields with tones of their own in which the second picture reverses them. */
  readonly reversing: number | null;
}

export interface TurningOptions {
  readonly columns?: number;
  readonly rows?: number;
  /** The plate's own part of the frame, samples; the middle 80 % where nothing is said. */
  readonly region?: Region;
}

export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A field with less difference than this share of the plate's own has no tones to turn. */
const leastShare = 0.1;

/** @param positive @param negative Linear luminance in one frame, the same size. */
export function plateTurning(
  positive: Plane,
  negative: Plane,
  { columns = 12, rows = 9, region = middle(positive) }: TurningOptions = {},
): PlateTurning {
  const tones = tonesOf(positive, negative, region);
  const whole = tones.ok ? turningPoint(tones.value) : tones;
  const least = tones.ok ? leastShare * differences(tones.value).gain : Infinity;
  const values: (number | null)[] = [];
  let [toned, reversing] = [0, 0];
  const [w, h] = [positive.width / columns, positive.height / rows];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const field = { x: column * w, y: row * h, width: w, height: h };
      const own = within(field, region) ? tonesOf(positive, negative, field) : null;
      if (!own?.ok || differences(own.value).gain < least) {
        values.push(null);
        continue;
      }
      toned += 1;
      const point = turningPoint(own.value);
      if (point.ok) reversing += 1;
      // A loss that is small against the gain gives a number that noise decides.
      const sure = point.ok && differences(own.value).loss > leastShare * lossOf(tones);
      values.push(sure ? point.value : null);
    }
  }
  const told = values.filter((v) => v !== null);
  const enough = told.length >= 4;
  return {
    value: whole.ok ? whole.value : null,
    reason: whole.ok ? null : whole.reason,
    tones: tones.ok ? tones.value : null,
    map: { columns, rows, values },
    lower: enough ? quantile(told, 0.25) : null,
    upper: enough ? quantile(told, 0.75) : null,
    reversing: toned === 0 ? null : reversing / toned,
  };
}

function differences(tones: Tones): { gain: number; loss: number } {
  return {
    gain: tones.positiveHighlight - tones.positiveShadow,
    loss: tones.negativeShadow - tones.negativeHighlight,
  };
}

function lossOf(tones: ReturnType<typeof tonesOf>): number {
  return tones.ok ? Math.max(0, differences(tones.value).loss) : 0;
}

function middle({ width, height }: Plane): Region {
  return { x: 0.1 * width, y: 0.1 * height, width: 0.8 * width, height: 0.8 * height };
}

/** Whether the middle of a field lies in the region. */
function within(field: Region, region: Region): boolean {
  const [x, y] = [field.x + field.width / 2, field.y + field.height / 2];
  return (
    x >= region.x && x <= region.x + region.width && y >= region.y && y <= region.y + region.height
  );
}
