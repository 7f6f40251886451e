/**
 * The mosaic laid on the base: its overview is aligned like any capture, and the frame of the
 * mosaic becomes that of the base, made finer until no pixel of a close-up is lost. So the mosaic
 * lies in register with every other view, with more pixels.
 */
import { project, type Homography } from '../conventions.ts';
import { median } from '../inspect/quantile.ts';
import type { Plane16 } from '../plane.ts';
import { compose, enlargement, invert, normalise } from '../registration/homography.ts';
import { register } from '../registration/register.ts';
import type { RegistrationEstimate } from '../registration/estimate.ts';
import { ownFrame, overview, type Frame, type PlacedTile } from './draw-plan.ts';

export type Hung =
  | {
      readonly ok: true;
      /** Pixels of the mosaic per pixel of the base. */
      readonly scale: number;
      readonly frame: Frame;
      /** From each tile to the mosaic. */
      readonly maps: readonly Homography[];
      /** From the overview to the base. */
      readonly registration: RegistrationEstimate;
    }
  | { readonly ok: false; readonly reason: string };

/** A scale this near to a whole number is taken for it, as a share. */
const nearWhole = 0.03;

/** @param tiles Their maps lead to any common frame. */
export function hangOnBase(
  base: Plane16,
  tiles: readonly PlacedTile[],
  factor: number,
  pixelsPerMillimetre: number | null,
): Hung {
  const own = ownFrame(
    tiles,
    tiles.map((t) => t.map),
  );
  const moved = tiles.map((tile, t) => ({ ...tile, map: own.maps[t] }));
  const outcome = register(base, overview(moved, own, factor), { pixelsPerMillimetre });
  if (!outcome.ok) return outcome;
  const { homography, radial } = outcome.value;
  if (radial) {
    const reason =
      'The close-ups were joined, but lie on the base only with a lens term, which a mosaic of ' +
      'several frames of one lens does not have as a whole.';
    return { ok: false, reason };
  }
  const toBase = own.maps.map((map) =>
    normalise(compose(compose(homography, enlargement(1 / factor)), map)),
  );
  const scale = scaleOf(tiles, toBase);
  const frame = {
    width: Math.round(base.width * scale),
    height: Math.round(base.height * scale),
  };
  const maps = toBase.map((map) => normalise(compose(enlargement(scale), map)));
  return { ok: true, scale, frame, maps, registration: outcome.value };
}

/** Pixels of a close-up per pixel of the base, in the middle of the tiles; at least 1. */
function scaleOf(tiles: readonly PlacedTile[], toBase: readonly Homography[]): number {
  const scales = tiles.map(({ width, height }, t) => {
    const back = invert(toBase[t]);
    const [x, y] = project(toBase[t], width / 2, height / 2);
    const [ax, ay] = project(back, x - 0.5, y);
    const [bx, by] = project(back, x + 0.5, y);
    return Math.hypot(bx - ax, by - ay);
  });
  const scale = Math.max(1, median(scales));
  const whole = Math.round(scale);
  return Math.abs(scale / whole - 1) < nearWhole ? whole : scale;
}
