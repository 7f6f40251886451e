/**
 * The four edges of the plate in the picture: straight lines, nearly along the picture's
 * sides, across which the tone changes the same way along most of their length. The outermost
 * such line on each side is taken, since inside it a mat, an opening or a horizon may follow.
 *
 * The search adds up slopes along many lines of every angle and place, as a Radon transform
 * does; slopes are limited first, so that one glint on the bevel cannot pass for an edge.
 *
 * References
 * - Deans, S. R. (1981). Hough transform from the Radon transform. IEEE Trans. Pattern Anal.
 *   Mach. Intell. 3(2), 185-188. doi:10.1109/TPAMI.1981.4767076
 */
import type { Estimate } from '../plane.ts';
import { smooth } from './gaussian.ts';
import { robustLeastSquares } from './least-squares.ts';
import { quadOf, type Point, type Quad } from './quad.ts';
import { quantile } from './quantile.ts';
import type { Samples } from './samples.ts';

export interface PlateEdges {
  readonly outline: Quad;
  /** Standard uncertainty of the width and of the height, pixels. */
  readonly uncertaintyPixels: number;
}

const sides = ['left', 'top', 'right', 'bottom'] as const;
type Side = (typeof sides)[number];

/** Smoothing before slopes are taken, pixels. */
const smoothing = 1.2;
/** Largest tilt of the plate in the picture, degrees, and the step of the search. */
const largestTilt = 4;
const tiltStep = 0.25;
/**
 * Share of full agreement from which a line counts as an edge. Common practice, no source:
 * texture reaches about 0.3, a plate on velvet or on a light table 0.7 to 1.
 */
const leastAgreement = 0.55;
/** How deep the search goes, as a share of the picture's side. */
const deepest = 0.45;

/** A line along a side: the distance from that side at place `t` along it, -1 to 1. */
interface SideLine {
  readonly middle: number;
  readonly slope: number;
  readonly deviation: number;
  readonly points: number;
}

/**
 * Find the plate in a plane of linear light, best not much larger than 1000 pixels.
 * @param white Linear value of the brightest code.
 */
export function findPlateEdges(plane: Samples, white = 65535): Estimate<PlateEdges> {
  // One per cent of white: the noise of velvet must not look like an edge.
  const logs = new Float32Array(plane.data.length);
  for (let i = 0; i < logs.length; i += 1) logs[i] = Math.log(0.01 + plane.data[i] / white);
  const tones = smooth({ ...plane, data: logs }, smoothing);
  const light = smooth(plane, smoothing);
  const found: SideLine[] = [];
  for (const side of sides) {
    const line = findSide(slopesFrom(tones, side));
    // The logarithm shows faint edges but moves a blurred one outwards; linear light does not.
    const refined = line && refineSide(slopesFrom(light, side), line);
    if (!refined) return { ok: false, reason: `no straight edge was found on the ${side} side` };
    found.push(refined);
  }
  const outline = outlineOf(plane, found);
  const spread = found.map((l) => l.deviation ** 2 / l.points);
  // Two opposite edges make a length; a third of a pixel each is for what an edge's blur hides.
  const uncertaintyPixels = Math.sqrt(spread.reduce((a, b) => a + b, 0) / 2 + 2 * 0.33 ** 2);
  return { ok: true, value: { outline, uncertaintyPixels } };
}

/** Slopes on the way inwards from one side: `depth` runs inwards, `along` beside the side. */
interface Slopes {
  readonly depth: number;
  readonly along: number;
  /** Row-major, one row per place along the side. */
  readonly data: Float32Array;
  /** What a slope is compared with. */
  readonly scale: number;
}

function slopesFrom({ width, height, data }: Samples, side: Side): Slopes {
  const upright = side === 'left' || side === 'right';
  const far = side === 'right' || side === 'bottom';
  const length = upright ? width : height;
  const along = upright ? height : width;
  const depth = Math.floor(deepest * length);
  const slopes = new Float32Array(depth * along);
  for (let t = 0; t < along; t += 1) {
    for (let d = 1; d < depth - 1; d += 1) {
      const at = (s: number): number => {
        const k = far ? length - 1 - s : s;
        return upright ? data[t * width + k] : data[k * width + t];
      };
      slopes[t * depth + d] = 0.5 * (at(d + 1) - at(d - 1));
    }
  }
  const sizes = Float32Array.from({ length: 4000 }, (_, k) =>
    Math.abs(slopes[Math.floor((k * slopes.length) / 4000)]),
  );
  return { depth, along, data: slopes, scale: Math.max(0.01, 2 * quantile(sizes, 0.7)) };
}

/** A line of the coarse search, and whether it brightens (1) or darkens (-1) inwards. */
interface CoarseLine {
  readonly place: number;
  readonly tilt: number;
  readonly agreement: number;
}

function findSide(slopes: Slopes): CoarseLine | null {
  const { depth, along } = slopes;
  const tilts = Math.round(largestTilt / tiltStep);
  const candidates: CoarseLine[] = [];
  for (let k = -tilts; k <= tilts; k += 1) {
    const tilt = Math.tan((k * tiltStep * Math.PI) / 180) * (along / 2);
    for (let place = 2; place < depth - 2; place += 1) {
      candidates.push({ place, tilt, agreement: agreementAlong(slopes, place, tilt) });
    }
  }
  const best = Math.max(...candidates.map((c) => Math.abs(c.agreement)));
  if (best < leastAgreement) return null;
  // The outermost line that agrees nearly as well as the best one, then the best beside it.
  const strong = candidates.filter(
    (c) => Math.abs(c.agreement) >= Math.max(leastAgreement, 0.8 * best),
  );
  const outermost = Math.min(...strong.map((c) => c.place));
  const near = strong.filter((c) => c.place <= outermost + 6);
  return near.reduce((a, b) => (Math.abs(b.agreement) > Math.abs(a.agreement) ? b : a));
}

/** Mean of limited slopes along a line, -1 to 1: 1 where all of it brightens inwards. */
function agreementAlong(
  { depth, along, data, scale }: Slopes,
  place: number,
  tilt: number,
): number {
  let sum = 0;
  let n = 0;
  const step = Math.max(1, Math.floor(along / 160));
  // The middle 84 %: near the corners the other two edges take over.
  for (let t = Math.round(0.08 * along); t < 0.92 * along; t += step) {
    const d = Math.round(place + tilt * ((2 * t) / (along - 1) - 1));
    n += 1;
    if (d < 1 || d >= depth - 1) continue;
    const slope = data[t * depth + d];
    sum += slope / (Math.abs(slope) + scale);
  }
  // A slope as large as the scale counts a half; an edge is several times that.
  return sum / n;
}

/** Sub-pixel place of the steepest slope in each row near the line, and a robust line through them. */
function refineSide(slopes: Slopes, coarse: CoarseLine): SideLine | null {
  const { depth, along, data } = slopes;
  const sign = Math.sign(coarse.agreement);
  const ts: number[] = [];
  const ds: number[] = [];
  for (let t = Math.round(0.08 * along); t < 0.92 * along; t += 1) {
    const u = (2 * t) / (along - 1) - 1;
    const centre = Math.round(coarse.place + coarse.tilt * u);
    let top = -1;
    let height = 0;
    for (let d = Math.max(2, centre - 5); d <= Math.min(depth - 3, centre + 5); d += 1) {
      const slope = sign * data[t * depth + d];
      if (slope > height) [top, height] = [d, slope];
    }
    if (top < 0) continue;
    const [a, b, c] = [-1, 0, 1].map((k) => sign * data[t * depth + top + k]);
    const bend = a - 2 * b + c;
    ts.push(u);
    ds.push(top + (bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (a - c)) / bend)) : 0));
  }
  if (ts.length < 0.4 * 0.84 * along) return null;
  const design = new Float64Array(ts.length * 2);
  ts.forEach((u, i) => design.set([1, u], 2 * i));
  const fit = robustLeastSquares(design, 2, ds, 0.05);
  if (!fit || fit.deviation > 2.5) return null;
  const [middle, slope] = fit.coefficients;
  return { middle, slope, deviation: fit.deviation, points: ts.length };
}

/** Corners where neighbouring sides meet, clockwise from the top left. */
function outlineOf({ width, height }: Samples, [left, top, right, bottom]: SideLine[]): Quad {
  const x =
    (line: SideLine, far: boolean) =>
    (v: number): number => {
      const d = line.middle + line.slope * ((2 * v) / (height - 1) - 1);
      return far ? width - 1 - d : d;
    };
  const y =
    (line: SideLine, far: boolean) =>
    (u: number): number => {
      const d = line.middle + line.slope * ((2 * u) / (width - 1) - 1);
      return far ? height - 1 - d : d;
    };
  const meet = (xOf: (v: number) => number, yOf: (u: number) => number): Point => {
    // Both lines tilt by a few degrees at most, so that this settles in a few rounds.
    let px = xOf(height / 2);
    let py = yOf(px);
    for (let k = 0; k < 20; k += 1) {
      px = xOf(py);
      py = yOf(px);
    }
    return [px, py];
  };
  const [l, t, r, b] = [x(left, false), y(top, false), x(right, true), y(bottom, true)];
  return quadOf([meet(l, t), meet(r, t), meet(r, b), meet(l, b)]);
}
