/**
 * How much of each fineness the camera keeps: the spatial frequency response from one
 * straight edge that lies a few degrees off the pixel rows. The rows cross it at slightly
 * different places, so that together they sample the edge four times finer than the pixels.
 *
 * Departures from the standard's text, each for a reason: a tapered window that is flat over
 * the middle half, because a Hamming window narrows a broad edge (it raises MTF50 of a
 * Gaussian blur of 2.5 px by 0.9 % at 80 px); the response of the bins and of the difference
 * is divided out; a quadratic edge, because lenses bend lines.
 *
 * References
 * - ISO 12233:2014, Photography - Electronic still picture imaging - Resolution and spatial
 *   frequency responses, annex D (edge-based SFR); the text itself was not at hand.
 * - Burns, P. D. (2000). Slanted-edge MTF for digital camera and scanner analysis. Proc.
 *   IS&T PICS 2000, 135-138.
 */
import type { Estimate } from '../plane.ts';
import { oversampling, responseOf, type EdgeResponse } from './edge-response.ts';
import { robustLeastSquares } from './least-squares.ts';
import type { Samples } from './samples.ts';

/**
 * Measure a part of a picture that one slanted edge crosses from side to side.
 * @param plane Linear light of any unit; encoded values give a wrong response.
 */
export function measureSlantedEdge(plane: Samples): Estimate<EdgeResponse> {
  const upright = isUpright(plane) ? plane : transpose(plane);
  const edge = traceEdge(upright);
  if (!edge.ok) return edge;
  const slope = edge.value.slopeAt(0.5 * (upright.height - 1));
  const angleDegrees = (Math.atan(Math.abs(slope)) * 180) / Math.PI;
  // Fewer than one pixel of travel leaves phases of the pixel grid unsampled.
  if (Math.abs(slope) * upright.height < 1) {
    return {
      ok: false,
      reason: `the edge lies only ${angleDegrees.toFixed(2)} degrees off the pixel rows`,
    };
  }
  const profile = gatherProfile(upright, edge.value);
  if (!profile.ok) return profile;
  return { ok: true, value: { ...responseOf(profile.value), angleDegrees } };
}

/** True when the edge runs nearer to the columns than to the rows. */
function isUpright({ width, height, data }: Samples): boolean {
  let across = 0;
  let down = 0;
  for (let y = 1; y < height; y += 1) {
    for (let x = 1; x < width; x += 1) {
      const here = data[y * width + x];
      across += here - data[y * width + x - 1];
      down += here - data[(y - 1) * width + x];
    }
  }
  return Math.abs(across) >= Math.abs(down);
}

function transpose({ width, height, data }: Samples): Samples {
  const turned = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) turned[x * height + y] = data[y * width + x];
  }
  return { width: height, height: width, data: turned };
}

interface TracedEdge {
  /** Column of the edge in a row, pixels. */
  readonly at: (row: number) => number;
  /** Columns per row there. */
  readonly slopeAt: (row: number) => number;
}

/** The edge's column in every row from the centroid of the difference, then a quadratic through them. */
function traceEdge(plane: Samples): Estimate<TracedEdge> {
  const { width, height } = plane;
  let guess: (row: number) => number = () => (width - 1) / 2;
  let reach = width / 2;
  let edge: TracedEdge | null = null;
  for (let pass = 0; pass < 4; pass += 1) {
    const rows: number[] = [];
    const columns: number[] = [];
    for (let y = 0; y < height; y += 1) {
      const column = centroid(plane, y, guess(y), reach);
      if (Number.isNaN(column)) continue;
      rows.push(y);
      columns.push(column);
    }
    if (rows.length < Math.max(12, height / 2)) {
      return { ok: false, reason: 'no single edge crosses the area' };
    }
    const design = new Float64Array(rows.length * 3);
    rows.forEach((y, i) => design.set([1, scaled(y), scaled(y) ** 2], 3 * i));
    const fit = robustLeastSquares(design, 3, columns, 0.02);
    if (!fit) return { ok: false, reason: 'no single edge crosses the area' };
    // A column off by more than this in most rows means that there was no edge to follow.
    if (pass === 3 && fit.deviation > 1) {
      return { ok: false, reason: 'the edge is too faint or too ragged to be followed' };
    }
    const [a, b, c] = fit.coefficients;
    edge = {
      at: (row) => a + b * scaled(row) + c * scaled(row) ** 2,
      slopeAt: (row) => (2 / height) * (b + 2 * c * scaled(row)),
    };
    guess = edge.at;
    reach = Math.min(reach, Math.max(16, width / 3));
  }
  if (!edge) return { ok: false, reason: 'no single edge crosses the area' };
  const ends = [edge.at(0), edge.at(height - 1)];
  if (ends.some((x) => x < 4 || x > width - 5)) {
    return { ok: false, reason: 'the edge leaves the area at its side' };
  }
  return { ok: true, value: edge };

  function scaled(row: number): number {
    return (2 * row) / height - 1;
  }
}

/** Centroid of a row's differences under a raised-cosine window; NaN where they cancel. */
function centroid({ width, data }: Samples, row: number, centre: number, reach: number): number {
  const first = Math.max(1, Math.ceil(centre - reach));
  const last = Math.min(width - 2, Math.floor(centre + reach));
  let sum = 0;
  let moment = 0;
  let total = 0;
  for (let x = first; x <= last; x += 1) {
    const at = row * width + x;
    const window = 0.5 + 0.5 * Math.cos((Math.PI * (x - centre)) / reach);
    const difference = (data[at + 1] - data[at - 1]) * window;
    sum += difference;
    moment += difference * x;
    total += Math.abs(difference);
  }
  // Differences that mostly cancel are texture or noise, not an edge.
  return Math.abs(sum) > 0.2 * total ? moment / sum : NaN;
}

/** The line spread across the edge, in steps of a quarter pixel, windowed. */
function gatherProfile(plane: Samples, edge: TracedEdge): Estimate<Float64Array> {
  const { width, height, data } = plane;
  // The part that every row reaches on both sides, so that no row is seen on one side only.
  let half = Infinity;
  for (let y = 0; y < height; y += 1) {
    const cos = 1 / Math.hypot(1, edge.slopeAt(y));
    half = Math.min(half, edge.at(y) * cos, (width - 1 - edge.at(y)) * cos);
  }
  const reach = Math.floor(half * oversampling) - 1;
  if (reach < 8 * oversampling) {
    return { ok: false, reason: 'less than 8 pixels lie on one side of the edge' };
  }
  const bins = 2 * reach;
  const sums = new Float64Array(bins);
  const offsets = new Float64Array(bins);
  const counts = new Uint32Array(bins);
  for (let y = 0; y < height; y += 1) {
    const cos = 1 / Math.hypot(1, edge.slopeAt(y));
    const at = edge.at(y);
    for (let x = 0; x < width; x += 1) {
      const place = (x - at) * cos * oversampling + reach;
      const bin = Math.floor(place);
      if (bin < 0 || bin >= bins) continue;
      sums[bin] += data[y * width + x];
      offsets[bin] += place - bin - 0.5;
      counts[bin] += 1;
    }
  }
  const profile = meanProfile(sums, offsets, counts);
  if (!profile) return { ok: false, reason: 'the edge lies too nearly along the pixel rows' };
  const spread = new Float64Array(bins - 1);
  for (let k = 0; k < bins - 1; k += 1) {
    const offset = Math.abs(k - (bins - 2) / 2) / ((bins - 1) / 2);
    spread[k] = (profile[k + 1] - profile[k]) * taper(offset);
  }
  return { ok: true, value: spread };
}

/**
 * Means of the bins, moved to the middle of each bin along the profile's own slope: at an
 * angle such as 1 in 10 the rows repeat and the samples of a bin lie to one side of it.
 * A lone empty bin is bridged, more than one in a row is not.
 */
function meanProfile(
  sums: Float64Array,
  offsets: Float64Array,
  counts: Uint32Array,
): Float64Array | null {
  const bins = sums.length;
  const means = new Float64Array(bins);
  const places = new Float64Array(bins);
  for (let k = 0; k < bins; k += 1) {
    if (counts[k] === 0) continue;
    means[k] = sums[k] / counts[k];
    places[k] = k + offsets[k] / counts[k];
  }
  const profile = new Float64Array(bins);
  for (let k = 0; k < bins; k += 1) {
    const before = k > 0 && counts[k - 1] > 0 ? k - 1 : k;
    const after = k < bins - 1 && counts[k + 1] > 0 ? k + 1 : k;
    if (counts[k] === 0 && (before === k || after === k)) return null;
    const from = counts[k] > 0 ? k : before;
    const slope =
      after === before ? 0 : (means[after] - means[before]) / (places[after] - places[before]);
    profile[k] = means[from] + slope * (k - places[from]);
  }
  return profile;
}

/** Tukey's tapered cosine: 1 over the inner half, falling to 0 at the ends. */
function taper(offset: number): number {
  return offset <= 0.5 ? 1 : 0.5 + 0.5 * Math.cos(2 * Math.PI * (offset - 0.5));
}
