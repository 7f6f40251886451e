/**
 * What a seam would show if nothing were mixed across it: by how much its two sides differ, in
 * patches along it. The median of a patch: a scratch that glints in one of the two is no step.
 */
import { median, quantile } from '../inspect/quantile.ts';
import { white } from '../registration/masked-plane.ts';
import type { SeamLine } from './along-seams.ts';

export interface SeamSteps {
  /** Shares of the local light, linear. */
  readonly median: number;
  readonly p95: number;
  readonly largest: number;
  readonly patches: number;
}

/** Length of a patch along the seam and half its width across, pixels of the mosaic. */
const patchLength = 48;
const patchHalf = 16;
/** Places darker than this share of white hold little but noise. Own choice. */
const darkest = 0.01;

/** @param levels What each seam's sides are already brought together by: see `seam-levels.ts`. */
export function seamSteps(
  lines: readonly SeamLine[],
  levels: readonly (readonly number[])[],
  cell: number,
): SeamSteps {
  const length = Math.max(2, Math.round(patchLength / cell));
  const half = Math.max(2, Math.round(patchHalf / cell));
  const steps = lines.flatMap(({ seam, light }, k) => {
    const found: number[] = [];
    for (let start = 0; start + length <= seam.length; start += length) {
      const logs: number[] = [];
      for (let line = start; line < start + length; line += 1) {
        const middle = Math.floor(seam[line]);
        for (let at = middle - half; at <= middle + half; at += 1) {
          const [before, after] = light(line, at);
          if (before < darkest * white || after < darkest * white) continue;
          logs.push(Math.log(after / before) - levels[k][line]);
        }
      }
      if (logs.length < (length * (2 * half + 1)) / 2) continue;
      found.push(Math.expm1(Math.abs(median(logs))));
    }
    return found;
  });
  return {
    median: steps.length > 0 ? quantile(steps, 0.5) : 0,
    p95: steps.length > 0 ? quantile(steps, 0.95) : 0,
    largest: Math.max(0, ...steps),
    patches: steps.length,
  };
}
