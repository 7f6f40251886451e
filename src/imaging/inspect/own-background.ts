/**
 * How evenly a plate was lit, from the plate itself, where nobody photographed a blank field.
 *
 * One capture cannot tell a lamp that is near on the left from a sky that is bright on the
 * left. A positive and a negative reading of the same plate can: the picture enters them with
 * opposite signs, the light does not. With silver s, lamp light P(x) and reflected light N(x),
 *
 *   positive = P(x) (c + d s),  negative = N(x) (m - k s),  hence
 *   negative = A(x) - B(x) positive,  A(x) = N(x) (m + k c / d),  B(x) = k N(x) / (d P(x)).
 *
 * A is fitted as a plane over blocks, B as a quadric, since it holds a reciprocal. A is what the bare mirror reflects, the even field
 * alone; A / B is the lamp's light. The captures need not be in register to the pixel: blocks
 * are hundreds of times larger. Own derivation from the model in DEVELOPERS.md, "Physics".
 *
 * Tarnish and haze dim both readings alike, which the model does not know. Where they, or a
 * picture bright on one side, carry the figure, it changes with the region that is left out:
 * the fit is therefore repeated without each region in turn, and says nothing if it hangs on one.
 *
 * References
 * - Efron, B. (1982). The Jackknife, the Bootstrap and Other Resampling Plans. SIAM, chapter 3.
 *   doi:10.1137/1.9781611970319 (the deviation of an estimate from leaving parts out)
 */
import type { Estimate } from '../plane.ts';
import { cellEdges } from './grid.ts';
import { robustLeastSquares } from './least-squares.ts';
import { depthInside, type Quad } from './quad.ts';
import { median, quantile } from './quantile.ts';
import type { Samples } from './samples.ts';

export interface FallOff {
  /** How much darker the darkest part of the plate is lit than the brightest, per cent of linear light. */
  readonly percent: number;
  /** Where the light is strongest: degrees clockwise from the picture's top edge. */
  readonly bearing: number;
}

export interface OwnBackground {
  readonly positive: FallOff;
  readonly negative: FallOff;
}

const terms = 9;
/** Blocks along the longer side. */
const blocksAcross = 28;
/** Regions that are left out in turn. */
const regions = { across: 4, down: 3 };
/**
 * Largest deviation of a fall-off, per cent of linear light: twice it is less than half of the
 * limit on fall-off. On renders 1.5 to 9 where the model holds, 14 and more or no fit where not.
 */
const mostDeviation = 10;

/**
 * @param positive Linear light of a positive reading.
 * @param negative The same size, the same plate, opposite tones, lying the same way.
 * @param outline The plate's corners; null takes the whole picture.
 */
export function measureOwnBackground(
  positive: Samples,
  negative: Samples,
  outline: Quad | null,
  clip: number,
): Estimate<OwnBackground> {
  if (positive.width !== negative.width || positive.height !== negative.height) {
    return { ok: false, reason: 'the two readings differ in size' };
  }
  const blocks = pairedBlocks(positive, negative, outline, clip);
  if (blocks.u.length < 60) return { ok: false, reason: 'too little of the plate holds tones' };
  const spread = quantile(blocks.negative, 0.95) - quantile(blocks.negative, 0.05);
  const whole = lightFrom(blocks, blocks, spread);
  if (!whole) return { ok: false, reason: 'the two readings do not explain each other' };
  const parts = Array.from({ length: regions.across * regions.down }, (_, region) =>
    lightFrom(without(blocks, region), blocks, spread),
  );
  const known = parts.filter((part) => part !== null);
  const deviation = Math.max(
    jackknifeDeviation(known.map((part) => part.positive.percent)),
    jackknifeDeviation(known.map((part) => part.negative.percent)),
  );
  if (known.length < parts.length || deviation > mostDeviation) {
    return { ok: false, reason: 'the figure hangs on a single region of the plate' };
  }
  return { ok: true, value: whole };
}

/** The light fitted to some blocks, over the places of all; null where the model does not hold. */
function lightFrom(
  blocks: PairedBlocks,
  places: PairedBlocks,
  spread: number,
): OwnBackground | null {
  const rows = new Float64Array(blocks.u.length * terms);
  blocks.u.forEach((u, i) => {
    const v = blocks.v[i];
    const p = blocks.positive[i];
    rows.set([1, u, v, -p, -p * u, -p * v, -p * u * u, -p * u * v, -p * v * v], terms * i);
  });
  const fit = robustLeastSquares(rows, terms, blocks.negative, 1e-3 * spread);
  // Unless the positive explains most of the negative, the two are not readings of one plate.
  if (!fit || fit.deviation > 0.15 * spread) return null;
  const [a0, a1, a2, b0, b1, b2, b3, b4, b5] = fit.coefficients;
  const mirror = (u: number, v: number): number => a0 + a1 * u + a2 * v;
  const lamp = (u: number, v: number): number =>
    mirror(u, v) / (b0 + b1 * u + b2 * v + b3 * u * u + b4 * u * v + b5 * v * v);
  const positive = fallOff(lamp, places);
  const negative = fallOff(mirror, places);
  return positive && negative && { positive, negative };
}

/** All blocks but those of one region. */
function without(blocks: PairedBlocks, region: number): PairedBlocks {
  const at = (place: number, count: number) =>
    Math.min(count - 1, Math.floor(((place + 1) / 2) * count));
  const kept = blocks.u.map(
    (u, i) => at(u, regions.across) + regions.across * at(blocks.v[i], regions.down) !== region,
  );
  const some = (values: readonly number[]) => values.filter((_, i) => kept[i]);
  return {
    u: some(blocks.u),
    v: some(blocks.v),
    positive: some(blocks.positive),
    negative: some(blocks.negative),
  };
}

function jackknifeDeviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(((values.length - 1) / values.length) * squares);
}

interface PairedBlocks {
  readonly u: number[];
  readonly v: number[];
  readonly positive: number[];
  readonly negative: number[];
}

function pairedBlocks(
  positive: Samples,
  negative: Samples,
  outline: Quad | null,
  clip: number,
): PairedBlocks {
  const { width, height } = positive;
  const side = Math.max(width, height) / blocksAcross;
  const across = cellEdges(width, Math.round(width / side));
  const down = cellEdges(height, Math.round(height / side));
  const found: PairedBlocks = { u: [], v: [], positive: [], negative: [] };
  for (let r = 0; r + 1 < down.length; r += 1) {
    for (let c = 0; c + 1 < across.length; c += 1) {
      const x = (across[c] + across[c + 1] - 1) / 2;
      const y = (down[r] + down[r + 1] - 1) / 2;
      if (outline && depthInside(outline, x, y) < 0.06 * outline.shorterSide) continue;
      const values = [positive, negative].map((plane) => blockMedian(plane, across, down, c, r));
      if (values.some((v) => !(v > 0 && v < clip))) continue;
      found.u.push((2 * (x + 0.5)) / width - 1);
      found.v.push((2 * (y + 0.5)) / height - 1);
      found.positive.push(values[0]);
      found.negative.push(values[1]);
    }
  }
  return found;
}

function blockMedian(
  { width, data }: Samples,
  across: Int32Array,
  down: Int32Array,
  column: number,
  row: number,
): number {
  const samples: number[] = [];
  for (let y = down[row]; y < down[row + 1]; y += 2) {
    for (let x = across[column]; x < across[column + 1]; x += 2) samples.push(data[y * width + x]);
  }
  return median(samples);
}

/** The fall-off over the places that were measured; null where the light comes out negative. */
function fallOff(light: (u: number, v: number) => number, { u, v }: PairedBlocks): FallOff | null {
  const values = u.map((x, i) => light(x, v[i]));
  if (values.some((value) => !(value > 0))) return null;
  const [low, high] = [quantile(values, 0.02), quantile(values, 0.98)];
  const right = light(0.5, 0) - light(-0.5, 0);
  const lower = light(0, 0.5) - light(0, -0.5);
  const bearing = (Math.atan2(right, -lower) * 180) / Math.PI;
  return { percent: 100 * (1 - low / high), bearing: (bearing + 360) % 360 };
}
