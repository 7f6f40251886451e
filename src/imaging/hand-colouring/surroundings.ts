/** The usual colour around a place, and how much it varies there: tarnish grows slowly over a plate. */
import { median, robustDeviation } from '../inspect/quantile.ts';

export interface Surroundings {
  readonly red: number;
  readonly blue: number;
  /** Of both together. */
  readonly deviation: number;
}

/** Fewer values than this say nothing of a place. */
const fewest = 12;
/** Values to a side of a neighbourhood that are looked at. */
const looked = 14;

/**
 * @param red, blue Row-major, `width` columns; NaN where nothing is known.
 * @param reach Half the side of a neighbourhood, pixels.
 * @returns By pixel index; null where too little is known around it.
 */
export function surroundingsOf(
  red: Float32Array,
  blue: Float32Array,
  width: number,
  reach: number,
): (index: number) => Surroundings | null {
  const height = red.length / width;
  const step = Math.max(1, Math.round(reach / 2));
  const columns = Math.ceil(width / step);
  const stride = Math.max(1, Math.floor((2 * reach) / looked));
  const kept = new Map<number, Surroundings | null>();
  const place = (column: number, row: number): Surroundings | null => {
    const [cx, cy] = [(column + 0.5) * step, (row + 0.5) * step];
    const reds: number[] = [];
    const blues: number[] = [];
    const bottom = Math.min(height, cy + reach);
    const right = Math.min(width, cx + reach);
    for (let y = Math.max(0, Math.round(cy - reach)); y < bottom; y += stride) {
      for (let x = Math.max(0, Math.round(cx - reach)); x < right; x += stride) {
        const at = y * width + x;
        if (Number.isNaN(red[at])) continue;
        reds.push(red[at]);
        blues.push(blue[at]);
      }
    }
    if (reds.length < fewest) return null;
    const deviation = Math.hypot(robustDeviation(reds), robustDeviation(blues));
    return { red: median(reds), blue: median(blues), deviation };
  };
  return (index) => {
    const column = Math.floor((index % width) / step);
    const row = Math.floor(Math.floor(index / width) / step);
    const key = row * columns + column;
    const found = kept.get(key);
    if (found !== undefined) return found;
    const made = place(column, row);
    kept.set(key, made);
    return made;
  };
}
