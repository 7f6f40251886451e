/**
 * The CIEDE2000 colour difference.
 *
 * References
 * - Sharma, G., Wu, W. and Dalal, E. N. (2005). The CIEDE2000 color-difference formula:
 *   implementation notes, supplementary test data, and mathematical observations. Color Research
 *   and Application 30(1), 21-30. doi:10.1002/col.20070 (DOI from memory)
 * - ISO/CIE 11664-6:2014.
 */
import type { Lab } from './lab.ts';

const radians = Math.PI / 180;
const sin = (degrees: number): number => Math.sin(degrees * radians);
const cos = (degrees: number): number => Math.cos(degrees * radians);
const pow25to7 = 25 ** 7;

/**
 * Two hues exactly half a turn apart lie on the border between two branches of the formula, and
 * the last bit of an arctangent decides. The table of 2005 counts the border as the near side.
 */
const borderDegrees = 1e-9;

/** Hue angle, 0 to 360 degrees; 0 for a neutral. */
function hue(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const degrees = Math.atan2(b, a) / radians;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** Difference of two colours, the weights kL, kC and kH all 1. */
export function ciede2000(first: Lab, second: Lab): number {
  const [L1, a1, b1] = first;
  const [L2, a2, b2] = second;
  const meanChroma = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const G = 0.5 * (1 - Math.sqrt(meanChroma ** 7 / (meanChroma ** 7 + pow25to7)));
  const C1 = Math.hypot((1 + G) * a1, b1);
  const C2 = Math.hypot((1 + G) * a2, b2);
  const h1 = hue((1 + G) * a1, b1);
  const h2 = hue((1 + G) * a2, b2);
  const neutral = C1 * C2 === 0;

  const apart = h2 - h1;
  const isNear = Math.abs(apart) <= 180 + borderDegrees;
  const turn = neutral || isNear ? 0 : apart > 180 ? -360 : 360;
  const dh = neutral ? 0 : apart + turn;
  const dL = L2 - L1;
  const dC = C2 - C1;
  const dH = 2 * Math.sqrt(C1 * C2) * sin(dh / 2);

  const L = (L1 + L2) / 2;
  const C = (C1 + C2) / 2;
  const sum = h1 + h2;
  const h = neutral ? sum : isNear ? sum / 2 : (sum < 360 ? sum + 360 : sum - 360) / 2;

  const T =
    1 - 0.17 * cos(h - 30) + 0.24 * cos(2 * h) + 0.32 * cos(3 * h + 6) - 0.2 * cos(4 * h - 63);
  const SL = 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2);
  const SC = 1 + 0.045 * C;
  const SH = 1 + 0.015 * C * T;
  const RC = 2 * Math.sqrt(C ** 7 / (C ** 7 + pow25to7));
  const RT = -sin(60 * Math.exp(-(((h - 275) / 25) ** 2))) * RC;
  const [l, c, hh] = [dL / SL, dC / SC, dH / SH];
  return Math.sqrt(l * l + c * c + hh * hh + RT * c * hh);
}
