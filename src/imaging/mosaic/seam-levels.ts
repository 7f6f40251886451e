/**
 * What is left between two balanced tiles along their seam, patch by patch: the mirror throws
 * the lamp back otherwise in each close-up, and near the plate's edge within a millimetre. Half
 * of it is given to either side and faded out away from the seam: the coarse tones are mixed
 * over a wide band, the fine detail over a narrow one.
 *
 * References
 * - Burt, P. J. and Adelson, E. H. (1983). A multiresolution spline with application to image
 *   mosaics. ACM Trans. Graphics 2(4), 217-236. doi:10.1145/245.247 (why each band of detail
 *   needs a width of its own)
 */
import { median } from '../inspect/quantile.ts';
import { white } from '../registration/masked-plane.ts';
import type { SeamLine } from './along-seams.ts';

/** Half the side of a patch, pixels of the mosaic. */
const half = 14;
/** Darker places, as a share of white, have no say: there a ratio is noise. Own choice. */
const darkest = 0.006;
/** No level is larger, natural logarithm: what differs by more is no matter of tone. */
const most = 0.3;

/** Logarithm of the light after the seam over that before it, for each line; 0 where unknown. */
export function seamLevels({ seam, light }: SeamLine, cell: number): readonly number[] {
  const reach = Math.max(2, Math.round(half / cell));
  const logs: number[] = [];
  const isLit = (line: number, at: number): boolean => {
    const [before, after] = light(line, at);
    return before > darkest * white && after > darkest * white;
  };
  // At the plate's own edge a cell is part plate and part dark, in each close-up another part.
  const isInside = (line: number, at: number): boolean =>
    isLit(line, at) &&
    isLit(line - 2, at) &&
    isLit(line + 2, at) &&
    isLit(line, at - 2) &&
    isLit(line, at + 2);
  const across = seam.map((position, line) => {
    const middle = Math.floor(position);
    logs.length = 0;
    for (let at = middle - reach; at <= middle + reach; at += 1) {
      if (!isInside(line, at)) continue;
      const [before, after] = light(line, at);
      logs.push(Math.log(after / before));
    }
    // The median: a scratch that glints in one of the two says nothing of the tone around it.
    return { log: logs.length > 0 ? median(logs) : 0, weight: logs.length };
  });
  return across.map((_, line) => {
    let [sum, weights] = [0, 0];
    for (let k = Math.max(0, line - reach); k <= line + reach && k < across.length; k += 1) {
      // A triangle along the seam, so that the level changes without steps.
      const weight = across[k].weight * (1 - Math.abs(k - line) / (reach + 1));
      sum += weight * across[k].log;
      weights += weight;
    }
    return weights === 0 ? 0 : Math.max(-most, Math.min(most, sum / weights));
  });
}
