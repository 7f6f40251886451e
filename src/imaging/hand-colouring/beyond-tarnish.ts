/**
 * Colour that tarnish does not explain, from two captures: one of what the plate scatters under
 * a lamp at its side, one of what it mirrors of an even field.
 *
 * Tarnish is a film that light to and from the particles and to and from the mirror crosses
 * alike: it colours both, and by nearly the same factor. Pigment lies on top as grains that
 * scatter; it colours what is scattered and takes light from the mirror without colouring it. So
 * the difference of the two chromas is the same all over a plate, however tarnished, and another
 * where pigment lies. What the film is made of need not be known.
 *
 * Nothing here identifies a pigment. A transparent dye, which colours the mirror too, is missed.
 *
 * References
 * - Own method. The factor between the two colours is that of a film on silver (`render/silver.ts`):
 *   1 where particles cover everything, 1.25 where they are few and light reaches them by way of
 *   the mirror, which is under the film as well.
 */
import { median } from '../inspect/quantile.ts';
import { chromaOf, type ChromaPlanes, type ColourPicture, lightOf } from './chroma.ts';
import { surroundingsOf } from './surroundings.ts';
import type { Estimate } from '../plane.ts';

/** What was found at a pixel. */
export const colourClasses = { notJudged: 0, plate: 1, unsure: 2, sure: 3 } as const;

export interface BeyondTarnish {
  /** {@link colourClasses} by pixel. */
  readonly classes: Uint8Array;
  /** Chroma of what is scattered less that of what is mirrored, where nothing lies: ln(R/G), ln(B/G). */
  readonly own: readonly [red: number, blue: number];
  /** Difference that counts as colour on a clean plate, in the same units. */
  readonly threshold: number;
}

/** Factor between the colour of a film over particles and over the mirror. */
const filmFactors = [1, 1.25] as const;
/** Least difference that counts, and the share of the tarnish's own colour that is added to it. */
const leastDifference = 0.1;
const shareOfTarnish = 0.25;
/** Beside tarnish of a stronger colour than this a place without a difference may be coloured all the same. */
const tooStrong = 0.35;
/**
 * Where the mirror is hidden so much more has to be seen, and beside tarnish of a stronger colour
 * than this nothing is sure.
 */
const hiddenDifference = 0.1;
const strongestHidden = 0.2;
/** Noise allowed for, standard deviations. */
const sigmas = 4;
/** From this share of the difference that counts, a pixel may be coloured. */
const unsureFrom = 0.6;
/**
 * Bare mirror and gilded particles differ by little; a greater difference over the whole plate is
 * a wrong balance of white or a colour over more than half of it.
 */
const expectedOwn = [0.03, -0.06] as const;
const mostOwn = 0.25;
/** Less of the mirror's light than this share of a bare mirror's is mostly scattered light. */
const leastMirror = 0.16;
/** Share of the pixels that must be judged. */
const leastJudged = 0.02;

/**
 * @param scattered The plate under a lamp at its side, before a dark surround.
 * @param mirrored The same places of it reflecting an even field.
 * @param neighbourhood Distance over which tarnish is taken to be even where the mirror is hidden, pixels.
 */
export function beyondTarnish(
  scattered: ColourPicture,
  mirrored: ColourPicture,
  neighbourhood: number,
): Estimate<BeyondTarnish> {
  const p = chromaOf(scattered);
  const m = chromaOf(mirrored);
  const bare = bareMirror(mirrored);
  const n = p.red.length;
  const seen: number[] = [];
  for (let i = 0; i < n; i += 1) {
    if (Number.isNaN(p.red[i]) || Number.isNaN(m.red[i])) continue;
    if (lightOf(mirrored, i) >= leastMirror * bare) seen.push(i);
  }
  if (seen.length < leastJudged * n) {
    return {
      ok: false,
      reason: 'hardly any place shows both what it scatters and what it mirrors',
    };
  }
  const middle = (values: (i: number) => number): number => median(seen.map(values));
  const own = [middle((i) => p.red[i] - m.red[i]), middle((i) => p.blue[i] - m.blue[i])] as const;
  if (Math.hypot(own[0] - expectedOwn[0], own[1] - expectedOwn[1]) > mostOwn) {
    return {
      ok: false,
      reason:
        'the two captures differ in colour over most of the plate, as under lamps of different whites',
    };
  }
  // The mirror without tarnish is near neutral; what is left of the middle is the balance of white.
  const clean = [middle((i) => m.red[i]), middle((i) => m.blue[i])].map(nearNeutral);
  const tarnish = median(seen.map((i) => Math.hypot(m.red[i] - clean[0], m.blue[i] - clean[1])));
  if (tarnish > tooStrong) {
    return {
      ok: false,
      reason: 'tarnish colours most of the plate too strongly to tell other colour from it',
    };
  }
  const around = surroundingsOf(...onlyAt(m, seen), scattered.width, neighbourhood);
  const classes = new Uint8Array(n);
  const judge = (i: number, red: number, blue: number, doubt: number, hidden: boolean): number => {
    const [fr, fb] = [red - clean[0], blue - clean[1]];
    const strength = Math.hypot(fr, fb);
    const least = leastOver(p.red[i] - own[0] - red, p.blue[i] - own[1] - blue, fr, fb);
    const counts =
      Math.max(leastDifference, sigmas * doubt) +
      (hidden ? hiddenDifference : 0) +
      shareOfTarnish * strength;
    if (least > counts) {
      return hidden && strength > strongestHidden ? colourClasses.unsure : colourClasses.sure;
    }
    if (least > unsureFrom * counts) return colourClasses.unsure;
    return strength > tooStrong ? colourClasses.notJudged : colourClasses.plate;
  };
  const isSeen = new Uint8Array(n);
  for (const i of seen) isSeen[i] = 1;
  for (let i = 0; i < n; i += 1) {
    if (Number.isNaN(p.red[i])) continue;
    const noise = p.noise / Math.sqrt(lightOf(scattered, i));
    if (isSeen[i]) {
      const other = m.noise / Math.sqrt(lightOf(mirrored, i));
      classes[i] = judge(i, m.red[i], m.blue[i], Math.hypot(noise, other), false);
    } else {
      // Particles or pigment hide the mirror: the tarnish is taken to be that of the surroundings.
      const near = around(i);
      if (near) classes[i] = judge(i, near.red, near.blue, Math.hypot(noise, near.deviation), true);
    }
  }
  return { ok: true, value: { classes, own, threshold: leastDifference } };
}

/** Both chroma planes with NaN wherever the mirror is hidden. */
function onlyAt(planes: ChromaPlanes, seen: readonly number[]): [Float32Array, Float32Array] {
  const red = new Float32Array(planes.red.length).fill(NaN);
  const blue = new Float32Array(red.length);
  for (const i of seen) {
    red[i] = planes.red[i];
    blue[i] = planes.blue[i];
  }
  return [red, blue];
}

/** Distance that is left when the film may add 0 to a quarter of its colour once more. */
function leastOver(dr: number, db: number, fr: number, fb: number): number {
  const square = fr * fr + fb * fb;
  const along = square > 0 ? (dr * fr + db * fb) / square : 0;
  const more = Math.min(filmFactors[1] - 1, Math.max(filmFactors[0] - 1, along));
  return Math.hypot(dr - more * fr, db - more * fb);
}

function nearNeutral(value: number): number {
  return Math.min(0.1, Math.max(-0.1, value));
}

/** Light of the field in bare mirror: what all but a fiftieth of the plate stays below. */
function bareMirror(picture: ColourPicture): number {
  const some: number[] = [];
  for (let i = 0; i < picture.red.length; i += 5) some.push(lightOf(picture, i));
  some.sort((a, b) => a - b);
  return some[Math.floor(0.98 * (some.length - 1))];
}
