/** What each frame of a bracket brings to the merge: where it is worth listening to. */
import type { FrameSignals } from './exposure-times.ts';
import type { MergeModel } from './merge-exposures.ts';

/** A frame counts at a place when it brings this share of all that is known there. */
const worthListening = 0.05;

/** Share of the places, 0 to 1, where each frame brings at least a twentieth of the information. */
export function frameContributions(frames: FrameSignals, model: MergeModel): number[] {
  const { seconds, clip, variance } = model;
  const counts = seconds.map(() => 0);
  const information = seconds.map(() => 0);
  let places = 0;
  for (let i = 0; i < frames[0].length; i += 1) {
    let [sum, time] = [0, 0];
    for (let k = 0; k < seconds.length; k += 1) {
      if (frames[k][i] >= clip) continue;
      sum += frames[k][i];
      time += seconds[k];
    }
    if (time === 0) continue;
    places += 1;
    let total = 0;
    for (let k = 0; k < seconds.length; k += 1) {
      const t = seconds[k];
      information[k] = frames[k][i] < clip ? (t * t) / variance((sum / time) * t) : 0;
      total += information[k];
    }
    for (let k = 0; k < seconds.length; k += 1) {
      if (information[k] >= worthListening * total) counts[k] += 1;
    }
  }
  return counts.map((count) => (places === 0 ? 0 : count / places));
}
