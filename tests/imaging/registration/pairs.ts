/**
 * Pairs of captures with a known map between them, from one seeded generator.
 *
 * Not a model of a plate's optics (src/imaging/render is): it takes any picture, lays it on two
 * captures by exact maps, and spoils each in its own way, so that photographs that nobody here
 * made can be used as well.
 */
import type { Homography } from '../../../src/imaging/conventions.ts';
import type { Plane, Plane16 } from '../../../src/imaging/plane.ts';
import {
  compose,
  invert,
  normalise,
  translation,
} from '../../../src/imaging/registration/homography.ts';
import { gaussianBlur } from '../../../src/imaging/registration/gaussian-blur.ts';
import { laySigns, type Lay } from '../../../src/imaging/registration/lay.ts';
import { warpPlane } from '../../../src/imaging/registration/warp-plane.ts';

export interface PairOptions {
  readonly width: number;
  readonly height: number;
  readonly seed: number;
  readonly lay?: Lay;
  /** Twice the noise, soft, contrast that fades and changes sides from place to place. */
  readonly weak?: boolean;
  /** Whether the second capture has opposite tones. */
  readonly opposite?: boolean;
  /** Largest turn in degrees, change of size and shift as a share of the width. */
  readonly motion?: { readonly turn: number; readonly size: number; readonly shift: number };
}

export interface Pair {
  readonly base: Plane16;
  readonly moving: Plane16;
  /** From the moving capture to the base, pixels. */
  readonly truth: Homography;
  readonly lay: Lay;
}

/** Mulberry32: uniform numbers from 0 to 1. */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A picture with blobs, strokes and fine grain, 0 to 1: different for every seed. */
export function inventedPicture(width: number, height: number, seed: number): Plane {
  const random = seeded(seed);
  const data = new Float32Array(width * height).fill(0.35 + 0.3 * random());
  for (let k = 0; k < 70; k += 1) addEllipse(data, width, height, random);
  for (let k = 0; k < 60; k += 1) addStroke(data, width, height, random, 0.35);
  const grain = gaussianBlur(noise(width * height, random), width, height, 1.6);
  const cloud = gaussianBlur(noise(width * height, random), width, height, 9);
  for (let i = 0; i < data.length; i += 1) data[i] += 0.22 * grain[i] + 1.4 * cloud[i];
  const soft = gaussianBlur(data, width, height, 0.8);
  return { width, height, data: soft.map((v) => Math.min(1, Math.max(0, v))) };
}

/** @param picture Luminance 0 to 1, larger than the captures by about a tenth on every side. */
export function spoiledPair(picture: Plane, options: PairOptions): Pair {
  const { width, height, weak = false, opposite = true, lay = 'as-is' } = options;
  const random = seeded(options.seed * 7919 + 17);
  const toPicture = compose(
    translation((picture.width - 1) / 2 + random(), (picture.height - 1) / 2 + random()),
    translation(-(width - 1) / 2, -(height - 1) / 2),
  );
  // From the base to the moving capture.
  const motion = randomMotion(width, height, lay, random, options.motion);
  const fromMoving = compose(toPicture, invert(motion));
  const still = draw(picture, toPicture, width, height);
  const other = draw(picture, fromMoving, width, height);
  return {
    base: photograph(still, { width, height, opposite: false, fading: false, weak }, random),
    moving: photograph(other, { width, height, opposite, fading: weak, weak }, random),
    truth: invert(motion),
    lay,
  };
}

function randomMotion(
  width: number,
  height: number,
  lay: Lay,
  random: () => number,
  limits = { turn: 3, size: 0.02, shift: 0.04 },
): Homography {
  const between = (limit: number) => (2 * random() - 1) * limit;
  const angle = (between(limits.turn) * Math.PI) / 180;
  const size = 1 + between(limits.size);
  const [sx, sy] = laySigns(lay);
  const c = size * Math.cos(angle);
  const s = size * Math.sin(angle);
  const lean = 0.02 / width;
  const m: Homography = [
    c * sx,
    -s * sy,
    between(limits.shift * width),
    s * sx,
    c * sy,
    between(limits.shift * width),
    between(lean),
    between(lean),
    1,
  ];
  const toCentre = translation(-(width - 1) / 2, -(height - 1) / 2);
  return normalise(compose(compose(invert(toCentre), m), toCentre));
}

function draw(picture: Plane, toPicture: Homography, width: number, height: number): Float32Array {
  const source = { ...picture, usable: new Uint8Array(picture.data.length).fill(1) };
  return warpPlane(source, normalise(toPicture), width, height, 'cubic').data;
}

interface Shot {
  readonly width: number;
  readonly height: number;
  readonly opposite: boolean;
  /** Contrast that fades and changes sides from place to place. */
  readonly fading: boolean;
  /** Soft and noisy. */
  readonly weak: boolean;
}

/** Tone curve, uneven light, scratches, glare, noise, eight bits. */
function photograph(tones: Float32Array, shot: Shot, random: () => number): Plane16 {
  const { width, height } = shot;
  let light = new Float32Array(tones.length);
  const exponent = 1.2 + 0.8 * random();
  const contrast = shot.fading ? fadingContrast(width, height, random) : null;
  const lean = [0.5 * (random() - 0.5), 0.5 * (random() - 0.5)];
  for (let i = 0; i < tones.length; i += 1) {
    const t = Math.min(1, Math.max(0, tones[i]));
    const toned = contrast ? 0.5 + (t - 0.5) * contrast[i] : t;
    const shown = (shot.opposite ? 1 - toned : toned) ** exponent;
    const x = (i % width) / width - 0.5;
    const y = Math.floor(i / width) / height - 0.5;
    light[i] = (0.03 + 0.6 * shown) * (1 + lean[0] * x + lean[1] * y);
  }
  for (let k = 0; k < 15; k += 1) addStroke(light, width, height, random, 0.6);
  for (let k = 0; k < 4; k += 1) addGlare(light, width, height, random);
  if (shot.weak) light = gaussianBlur(light, width, height, 1.5) as Float32Array<ArrayBuffer>;
  const grain = noise(light.length, random);
  const amount = shot.weak ? 0.045 : 0.012;
  const data = new Uint16Array(light.length);
  for (let i = 0; i < data.length; i += 1) {
    const v = light[i] + amount * Math.sqrt(Math.max(0.02, light[i])) * grain[i];
    // Eight bits through a curve of exponent 1/2.2, as an ordinary file has.
    const code = Math.round(255 * Math.min(1, Math.max(0, v)) ** (1 / 2.2));
    data[i] = Math.round(65535 * (code / 255) ** 2.2);
  }
  return { width, height, data };
}

/** From -0.45 (changed sides) to 0.75, changing over about a fifth of the width. */
function fadingContrast(width: number, height: number, random: () => number): Float32Array {
  const waves = Array.from({ length: 4 }, () => [
    (random() - 0.5) * 4,
    (random() - 0.5) * 4,
    random() * 2 * Math.PI,
  ]);
  return Float32Array.from({ length: width * height }, (_, i) => {
    const x = (i % width) / width;
    const y = Math.floor(i / width) / height;
    let sum = 0;
    for (const [fx, fy, phase] of waves) sum += Math.sin(2 * Math.PI * (fx * x + fy * y) + phase);
    return 0.15 + 0.3 * Math.max(-2, Math.min(2, sum));
  });
}

/** Standard normal numbers (Box and Muller 1958). */
function noise(length: number, random: () => number): Float32Array {
  const data = new Float32Array(length);
  for (let i = 0; i < length; i += 2) {
    const r = Math.sqrt(-2 * Math.log(1 - random()));
    const a = 2 * Math.PI * random();
    data[i] = r * Math.cos(a);
    if (i + 1 < length) data[i + 1] = r * Math.sin(a);
  }
  return data;
}

function addEllipse(data: Float32Array, width: number, height: number, random: () => number) {
  const cx = random() * width;
  const cy = random() * height;
  const a = (0.01 + 0.1 * random() ** 2) * width;
  const b = (0.01 + 0.1 * random() ** 2) * width;
  const angle = random() * Math.PI;
  const tone = (random() - 0.5) * 0.6;
  const r = Math.ceil(Math.max(a, b)) + 2;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  for (let y = Math.max(0, Math.floor(cy - r)); y < Math.min(height, cy + r); y += 1) {
    for (let x = Math.max(0, Math.floor(cx - r)); x < Math.min(width, cx + r); x += 1) {
      const u = ((x - cx) * c + (y - cy) * s) / a;
      const v = ((y - cy) * c - (x - cx) * s) / b;
      const inside = (1 - Math.hypot(u, v)) * Math.min(a, b);
      if (inside > -0.5) data[y * width + x] += tone * Math.min(1, inside + 0.5);
    }
  }
}

function addStroke(
  data: Float32Array,
  width: number,
  height: number,
  random: () => number,
  strength: number,
): void {
  let x = random() * width;
  let y = random() * height;
  let direction = random() * 2 * Math.PI;
  const bend = (random() - 0.5) * 0.01;
  const tone = (random() - 0.4) * strength;
  const length = (0.05 + 0.3 * random()) * width;
  for (let k = 0; k < length; k += 0.5) {
    const i = Math.round(y) * width + Math.round(x);
    if (x >= 0 && y >= 0 && x < width - 1 && y < height - 1) data[i] += tone * 0.5;
    x += 0.5 * Math.cos(direction);
    y += 0.5 * Math.sin(direction);
    direction += bend;
  }
}

function addGlare(data: Float32Array, width: number, height: number, random: () => number): void {
  const cx = random() * width;
  const cy = random() * height;
  const sigma = (0.01 + 0.025 * random()) * width;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const d2 = ((x - cx) ** 2 + (y - cy) ** 2) / (2 * sigma * sigma);
      if (d2 < 12) data[y * width + x] += 2.5 * Math.exp(-d2);
    }
  }
}
