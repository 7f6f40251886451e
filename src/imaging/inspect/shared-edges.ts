/**
 * How much softer one capture is than another of the same plate in the same frame: the blur at
 * edges that both of them show, whatever their tones. A scratch that only raking light shows,
 * or a glint that only one lamp makes, takes no part.
 *
 * References
 * - The blur at an edge: edge-blur.ts.
 */
import type { Estimate } from '../plane.ts';
import { edgePoints, type EdgePoint } from './edge-blur.ts';
import { median, quantile } from './quantile.ts';
import type { Samples } from './samples.ts';

export interface BlurComparison {
  /** Blur of the second beyond that of the first, pixels; negative where the second is sharper. */
  readonly extra: number;
  /** Edge points that were compared. */
  readonly edges: number;
}

/** How far the second capture may lie from the first, pixels. */
const reach = 24;
/** Slope over the median slope: of an edge that is looked for, and of the one that answers. */
const strongOverNoise = 5;
const weakOverNoise = 2.5;
/** An answering edge lies within this many pixels and runs the same way within about 25 degrees. */
const nearby = 2;
const parallel = 0.9;
const fewestEdges = 80;
/** Share of the strong edges of a part that must be answered for its shift to be believed. */
const leastAnswered = 0.25;
const mostAsked = 500;

/**
 * @param first Parts of one capture, linear light, 0 to `white`.
 * @param second The same parts of another.
 */
export function compareBlur(
  first: readonly Samples[],
  second: readonly Samples[],
  white = 65535,
): Estimate<BlurComparison> {
  const chosenInFirst: number[] = [];
  const chosenInSecond: number[] = [];
  first.forEach((part, k) => {
    const [a, b] = [part, second[k]].map((p) => edgesOf(p, white));
    const shift = findShift(a.strong, b);
    if (!shift) return;
    const back = { x: -shift.x, y: -shift.y };
    // Who chooses the edges looks sharp, so that each capture chooses once.
    for (const [p, q] of sharedPairs(a.strong, b, shift)) chosenInFirst.push(q.sigma - p.sigma);
    for (const [p, q] of sharedPairs(b.strong, a, back)) chosenInSecond.push(p.sigma - q.sigma);
  });
  const edges = Math.min(chosenInFirst.length, chosenInSecond.length);
  if (edges < fewestEdges) {
    return { ok: false, reason: `only ${edges} edges are seen in both captures` };
  }
  return {
    ok: true,
    value: { extra: (median(chosenInFirst) + median(chosenInSecond)) / 2, edges },
  };
}

interface PartEdges {
  readonly width: number;
  readonly height: number;
  readonly strong: readonly EdgePoint[];
  /** Index of an edge point at each pixel, -1 where there is none. */
  readonly at: Int32Array;
  readonly points: readonly EdgePoint[];
  /** Direction of each point. */
  readonly courses: Courses;
}

/** Directions as unit vectors, which are compared faster than angles. */
interface Courses {
  readonly across: Float64Array;
  readonly down: Float64Array;
}

function coursesOf(points: readonly EdgePoint[]): Courses {
  return {
    across: new Float64Array(points.map((p) => Math.cos(p.direction))),
    down: new Float64Array(points.map((p) => Math.sin(p.direction))),
  };
}

function edgesOf(part: Samples, white: number): PartEdges {
  const { points } = edgePoints(part, white, weakOverNoise);
  const at = new Int32Array(part.width * part.height).fill(-1);
  points.forEach(({ x, y }, k) => (at[y * part.width + x] = k));
  const noise = points.length > 0 ? Math.min(...points.map((p) => p.slope)) / weakOverNoise : 0;
  const clear = points.filter((p) => p.slope >= strongOverNoise * noise);
  const best = quantile(
    clear.map((p) => p.slope),
    0.5,
  );
  return {
    width: part.width,
    height: part.height,
    strong: clear.filter((p) => p.slope >= best),
    at,
    points,
    courses: coursesOf(points),
  };
}

interface Shift {
  readonly x: number;
  readonly y: number;
}

/** The shift under which most strong edges are answered; null when too few are under any. */
function findShift(strong: readonly EdgePoint[], other: PartEdges): Shift | null {
  if (strong.length < 20) return null;
  // Some hundred points settle a shift; all of them would only take longer.
  const step = Math.ceil(strong.length / mostAsked);
  const asked = strong.filter((_, k) => k % step === 0);
  const courses = coursesOf(asked);
  let best: Shift = { x: 0, y: 0 };
  let most = -1;
  for (let y = -reach; y <= reach; y += 1) {
    for (let x = -reach; x <= reach; x += 1) {
      const answered = answersUnder(asked, courses, other, x, y, most);
      if (answered > most) [most, best] = [answered, { x, y }];
    }
  }
  return most >= leastAnswered * asked.length ? best : null;
}

/** How many points have an edge of the other that runs along them, given up when `most` is out of reach. */
function answersUnder(
  asked: readonly EdgePoint[],
  { across, down }: Courses,
  { width, height, at, courses }: PartEdges,
  dx: number,
  dy: number,
  most: number,
): number {
  let answered = 0;
  for (let k = 0; k < asked.length && answered + asked.length - k > most; k += 1) {
    const x = asked[k].x + dx;
    const y = asked[k].y + dy;
    if (x < 0 || y < 0 || x >= width || y >= height) continue;
    const found = at[y * width + x];
    if (found < 0) continue;
    const along = across[k] * courses.across[found] + down[k] * courses.down[found];
    if (Math.abs(along) >= parallel) answered += 1;
  }
  return answered;
}

/** Parallel whichever side is bright. */
function runsAlong(a: EdgePoint, b: EdgePoint): boolean {
  return Math.abs(Math.cos(a.direction - b.direction)) >= parallel;
}

/** Each strong edge with the steepest parallel edge of the other near its shifted place. */
function* sharedPairs(
  strong: readonly EdgePoint[],
  other: PartEdges,
  shift: Shift,
): Generator<readonly [EdgePoint, EdgePoint]> {
  for (const point of strong) {
    let answer: EdgePoint | null = null;
    for (let dy = -nearby; dy <= nearby; dy += 1) {
      for (let dx = -nearby; dx <= nearby; dx += 1) {
        const [x, y] = [point.x + shift.x + dx, point.y + shift.y + dy];
        if (x < 0 || y < 0 || x >= other.width || y >= other.height) continue;
        const found = other.at[y * other.width + x];
        if (found < 0) continue;
        const here = other.points[found];
        if (runsAlong(point, here) && here.slope > (answer?.slope ?? 0)) answer = here;
      }
    }
    if (answer) yield [point, answer];
  }
}
