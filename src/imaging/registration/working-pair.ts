/**
 * Two captures made comparable: one pixel size, a small working copy, and windows of the full one.
 *
 * The finer of the two is shrunk to the coarser one's pixel size (the *common* size); both are
 * shrunk further to a working copy of at most 1500 pixels, which holds the whole plate in little
 * memory. Full detail is then read window by window.
 */
import type { Homography } from '../conventions.ts';
import type { Plane16 } from '../plane.ts';
import { compose, enlargement, normalise } from './homography.ts';
import {
  clipLevel,
  halvings,
  logTable,
  spreadMask,
  white,
  type MaskedPlane,
} from './masked-plane.ts';
import { shrinkPlane, shrinkToLog } from './shrink.ts';

/** Longer side of a working copy at most, pixels. */
export const workingSide = 1500;
/** The working copy is halved until it is no longer than this, pixels. */
const smallestSide = 256;
/** Bloom around clipped samples that is masked with them, as a share of the longer side. */
const bloom = 1 / 150;

/** One of the two captures. */
export interface Side {
  /** At the common pixel size. */
  readonly plane: Plane16;
  /** Pixels of the original file per common pixel, at least 1. */
  readonly pitch: number;
  /** Working copy and its halvings, largest first. */
  readonly levels: readonly MaskedPlane[];
}

export interface WorkingPair {
  readonly base: Side;
  readonly moving: Side;
  /** Common pixels per pixel of the working copy, at least 1. */
  readonly factor: number;
  readonly table: Float32Array;
}

/**
 * @param ratio Pixels of the moving file per pixel of the base that show the same detail: 1 for
 *   the same camera, 0.5 for a file at half size.
 */
export function prepareWorkingPair(base: Plane16, moving: Plane16, ratio: number): WorkingPair {
  const basePitch = Math.max(1, 1 / ratio);
  const movingPitch = Math.max(1, ratio);
  const commonBase = shrinkPlane(base, basePitch);
  const commonMoving = shrinkPlane(moving, movingPitch);
  const longest = Math.max(
    commonBase.width,
    commonBase.height,
    commonMoving.width,
    commonMoving.height,
  );
  const factor = Math.max(1, longest / workingSide);
  const still = maskedWorkingCopy(commonBase, factor);
  const other = maskedWorkingCopy(commonMoving, factor);
  // As many levels for both, whatever their sizes.
  const levels = halvings(still, smallestSide).length;
  const otherLevels = halvings(other, smallestSide).length;
  const depth = Math.max(levels, otherLevels);
  return {
    base: { plane: commonBase, pitch: basePitch, levels: toDepth(still, depth) },
    moving: { plane: commonMoving, pitch: movingPitch, levels: toDepth(other, depth) },
    factor,
    table: logTable(),
  };
}

function maskedWorkingCopy(plane: Plane16, factor: number): MaskedPlane {
  const copy = shrinkToLog(plane, factor);
  return spreadMask(copy, Math.round(Math.max(copy.width, copy.height) * bloom));
}

function toDepth(plane: MaskedPlane, depth: number): readonly MaskedPlane[] {
  const shortest = Math.max(plane.width, plane.height) / 2 ** (depth - 1);
  return halvings(plane, Math.max(1, Math.ceil(shortest)));
}

/** A map between working copies, rewritten for the common pixel size. */
export function toCommon(map: Homography, pair: WorkingPair): Homography {
  const up = enlargement(pair.factor);
  return normalise(compose(compose(up, map), enlargement(1 / pair.factor)));
}

/** A map between common pixels, rewritten for working copies. */
export function toWorking(map: Homography, pair: WorkingPair): Homography {
  const down = enlargement(1 / pair.factor);
  return normalise(compose(compose(down, map), enlargement(pair.factor)));
}

/** A map from base to moving in common pixels, rewritten for the pixels of the files. */
export function toFiles(map: Homography, pair: WorkingPair): Homography {
  const fromBase = enlargement(1 / pair.base.pitch);
  return normalise(compose(compose(enlargement(pair.moving.pitch), map), fromBase));
}

/** The other way round: a map in pixels of the files, rewritten for common pixels. */
export function fromFiles(map: Homography, pair: WorkingPair): Homography {
  const toBase = enlargement(pair.base.pitch);
  return normalise(compose(compose(enlargement(1 / pair.moving.pitch), map), toBase));
}

/**
 * Cut a window out of a capture at the common pixel size, as log-luminance.
 *
 * The window may reach beyond the capture; samples there repeat the edge and are not usable.
 */
export function cutWindow(
  pair: WorkingPair,
  side: Side,
  left: number,
  top: number,
  width: number,
  height: number,
): MaskedPlane {
  const { plane } = side;
  const mask = side.levels[0];
  const clip = clipLevel * white;
  const data = new Float32Array(width * height);
  const usable = new Uint8Array(width * height);
  const columns = Int32Array.from({ length: width }, (_, x) => within(left + x, plane.width));
  const maskColumns = columns.map((x) => within(Math.floor((x + 0.5) / pair.factor), mask.width));
  for (let y = 0; y < height; y += 1) {
    const row = within(top + y, plane.height);
    const maskRow = within(Math.floor((row + 0.5) / pair.factor), mask.height) * mask.width;
    const inside = top + y === row;
    for (let x = 0; x < width; x += 1) {
      const value = plane.data[row * plane.width + columns[x]];
      const o = y * width + x;
      data[o] = pair.table[value];
      if (inside && left + x === columns[x] && value < clip) {
        usable[o] = mask.usable[maskRow + maskColumns[x]];
      }
    }
  }
  return { width, height, data, usable };
}

function within(i: number, length: number): number {
  return Math.max(0, Math.min(length - 1, i));
}
