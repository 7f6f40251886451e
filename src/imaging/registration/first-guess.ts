/**
 * Where to start: the one first guess of the fast method, and the few of the weak-pair method.
 */
import { project, type Homography } from '../conventions.ts';
import {
  poses,
  searchPoses,
  type Candidate,
  type Pose,
  type SearchSettings,
} from './coarse-search.ts';
import { rescale } from './homography.ts';
import { lays } from './lay.ts';
import type { WorkingPair } from './working-pair.ts';

/** Rotations (degrees) and sizes that are tried: what a stand and a re-clamped plate leave open. */
const rotations = [-3, -1.5, 0, 1.5, 3];
const sizes = [0.985, 1, 1.015];

const small: SearchSettings = { transform: 256, sigmas: [0.8, 1.6], lowPass: 0.2, reach: 0.11 };
const larger: SearchSettings = { transform: 512, sigmas: [1, 2], lowPass: 0.2, reach: 0.11 };

/** A lay leads clearly when its peak is this high and this many times the next lay's. */
const clearLead = { z: 9, ratio: 1.6 };
/** Cells of the small search that the larger one looks at more closely. */
const closer = 7;
/** Starts of the weak-pair method at most; one alone when it leads by this ratio. */
const mostStarts = 3;
const loneLead = 1.6;

/** Every pose at the smallest level, best first. */
export type SmallSearch = readonly Candidate[];

/**
 * The small search, with all lays only if an upright look at each does not settle which it is.
 */
export function quickSearch(pair: WorkingPair): SmallSearch {
  const upright = searchSmallest(pair, poses([0], [1]));
  const led = upright[0].z >= clearLead.z && upright[0].z >= clearLead.ratio * upright[1].z;
  const rest = poses(rotations, sizes, led ? [upright[0].lay] : lays).filter(
    (p) => p.rotationDegrees !== 0 || p.size !== 1,
  );
  return [...upright, ...searchSmallest(pair, rest)].sort((a, b) => b.z - a.z);
}

/** The small search over everything. */
export function completeSearch(pair: WorkingPair): SmallSearch {
  return searchSmallest(pair, poses(rotations, sizes));
}

function searchSmallest(pair: WorkingPair, tried: readonly Pose[]): SmallSearch {
  const level = pair.base.levels.length - 1;
  return searchPoses(pair.base.levels[level], pair.moving.levels[level], tried, small);
}

/** The best pose, looked at more closely, at the smallest level. */
export function sharpenGuess(pair: WorkingPair, search: SmallSearch): Candidate {
  const best = search[0];
  const turns = [-0.8, -0.4, 0, 0.4, 0.8].map((d) => best.rotationDegrees + d);
  const scales = [-0.005, 0, 0.005].map((d) => best.size + d);
  const found = searchSmallest(pair, poses(turns, scales, [best.lay]));
  return found[0].z > best.z ? found[0] : best;
}

/** First guesses for the weak-pair method, in pixels of the working copies, best first. */
export function weakStarts(pair: WorkingPair, search: SmallSearch): readonly Homography[] {
  const smallest = pair.base.levels.length - 1;
  const level = Math.max(0, smallest - 1);
  const found = searchPoses(
    pair.base.levels[level],
    pair.moving.levels[level],
    around(search.slice(0, closer)),
    level === smallest ? small : larger,
  ).map((c) => ({ ...c, toMoving: rescale(c.toMoving, 2 ** level) }));
  const starts: Candidate[] = [];
  const { width, height } = pair.base.levels[0];
  for (const c of found) {
    if (starts.length >= mostStarts) break;
    if (!starts.some((s) => nearlySame(s, c, width, height))) starts.push(c);
  }
  const lone = starts.length > 1 && starts[0].z > loneLead * starts[1].z;
  return (lone ? starts.slice(0, 1) : starts).map((s) => s.toMoving);
}

/** The poses and their neighbours in rotation and in size, each once. */
function around(found: readonly Pose[]): readonly Pose[] {
  const seen = new Map<string, Pose>();
  for (const { lay, rotationDegrees, size } of found) {
    for (const [turn, scale] of [
      [0, 0],
      [-0.7, 0],
      [0.7, 0],
      [0, -0.006],
      [0, 0.006],
    ]) {
      const pose = { lay, rotationDegrees: rotationDegrees + turn, size: size + scale };
      seen.set(`${lay} ${pose.rotationDegrees.toFixed(1)} ${pose.size.toFixed(3)}`, pose);
    }
  }
  return [...seen.values()];
}

function nearlySame(a: Candidate, b: Candidate, width: number, height: number): boolean {
  const p = project(a.toMoving, width / 2, height / 2);
  const q = project(b.toMoving, width / 2, height / 2);
  return (
    a.lay === b.lay &&
    Math.abs(a.rotationDegrees - b.rotationDegrees) < 1.2 &&
    Math.hypot(p[0] - q[0], p[1] - q[1]) < 25
  );
}
