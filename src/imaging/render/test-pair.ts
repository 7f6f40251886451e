/**
 * Two captures of one plate with known truth, small and quick: the positive under a lamp and
 * the negative in an even field, ordinary or spoilt in the ways that plates and hands spoil them.
 */
import { type Homography } from '../conventions.ts';
import { type Plane16 } from '../plane.ts';
import { axialLight, sideLight } from './lighting.ts';
import { photographSeries, type Lighting } from './photograph.ts';
import { type Plate } from './plate.ts';
import { numbersFrom, seedOf } from './seeded.ts';
import { standInScene } from './stand-in.ts';
import { randomDust, randomScratches } from './strokes.ts';
import { betweenViews, type View } from './view.ts';

export interface PairOptions {
  readonly width?: number;
  readonly height?: number;
  /** The sensor's noise, as a factor; 0 for none. */
  readonly noise?: number;
  /** Standard deviation of the blur of the negative, pixels. */
  readonly blur?: number;
  /** Film of tarnish over the plate, nm: 0 for a clean one, 120 for heavy. */
  readonly tarnish?: number;
  /** Density of particles, 0 to 1: low for a faded plate. */
  readonly density?: number;
  /** How uneven the field of the negative is, 0 to 1. */
  readonly glare?: number;
  /** Scratches that only the negative shows. */
  readonly newScratches?: number;
  readonly lay?: View['lay'];
  /** Light of the second capture; the field that gives a negative where nothing is said. */
  readonly second?: 'positive' | 'negative';
  /** Largest shift in mm, turn and tilt in degrees, relative change of scale of the negative. */
  readonly move?: { shift?: number; turn?: number; tilt?: number; scale?: number };
}

export interface RenderedPair {
  readonly positive: Plane16;
  readonly negative: Plane16;
  /** Takes a pixel of the negative to the positive, without remainder. */
  readonly homography: Homography;
  readonly lay: NonNullable<View['lay']>;
  readonly pixelsPerMillimetre: number;
}

/** A plate of 69.9 x 52.4 mm with a picture that shows nothing in particular. */
export function standInPlate(seed: number, options: PairOptions = {}): Plate {
  const width = 69.9;
  const height = 52.4;
  const film = options.tarnish ?? 0;
  // Elements of the picture are as fine as the capture's pixels, up to the lens of the time.
  const sceneWidth = Math.min(900, options.width ?? 900);
  return {
    seed,
    support: 'silver',
    width,
    height,
    pictures: [
      {
        scene: standInScene(seed, sceneWidth, Math.round(0.75 * sceneWidth)),
        left: -width / 2,
        top: -height / 2,
        width,
        height,
      },
    ],
    laterallyReversed: true,
    density: options.density ?? 0.72,
    polish: 0.08,
    undulation: 0.15,
    tarnish: {
      openings: [{ shape: 'oval', width: 60, height: 45, x: 0, y: 0 }],
      rim: 40 + 1.5 * film,
      reach: 2 + film / 15,
      haze: film / 3,
      edge: film,
    },
    scratches: randomScratches(seedOf('scratches', seed), 30, width, height),
    dust: randomDust(seedOf('dust', seed), 120, 3, width, height),
    dents: [],
    filmSpots: [],
    tints: [],
  };
}

/** Positive (the base) and negative of one plate. Same seed and options, same samples. */
export function renderPair(seed: number, options: PairOptions = {}): RenderedPair {
  const width = options.width ?? 1200;
  const height = options.height ?? 900;
  const plate = standInPlate(seed, options);
  const lay = options.lay ?? 'as-is';
  const scale = Math.min(width / (plate.width + 5), height / (plate.height + 5));
  const base = standing(width, height, scale);
  const moved = { ...movedView(base, seed, options.move), lay };
  const later: Plate = {
    ...plate,
    scratches: [
      ...plate.scratches,
      ...randomScratches(
        seedOf('later', seed),
        options.newScratches ?? 0,
        plate.width,
        plate.height,
      ),
    ],
  };
  const noise = options.noise ?? 1;
  const again = options.second === 'positive';
  return {
    positive: capture(plate, base, lampLight(base.distance), 1.05, noise, 0.6, seed),
    negative: capture(
      later,
      moved,
      again ? lampLight(base.distance) : fieldLight(seed, options.glare ?? 0, scale),
      again ? 1.05 : 1 / (0.0817 * 1.15),
      noise,
      options.blur ?? 0.6,
      seed + 1,
    ),
    homography: betweenViews(moved, base),
    lay,
    pixelsPerMillimetre: scale,
  };
}

function standing(width: number, height: number, pixelsPerMillimetre: number): View {
  return {
    width,
    height,
    pixelsPerMillimetre,
    distance: 700,
    shift: [0, 0],
    turn: 0,
    tilt: [0, 0],
  };
}

function movedView(base: View, seed: number, move: PairOptions['move'] = {}): View {
  const next = numbersFrom(seedOf('move', seed));
  const about = (most: number) => (2 * next() - 1) * most;
  return {
    ...base,
    shift: [about(move.shift ?? 0.6), about(move.shift ?? 0.6)],
    turn: about(move.turn ?? 0.6),
    tilt: [about(move.tilt ?? 0.5), about(move.tilt ?? 0.5)],
    pixelsPerMillimetre: base.pixelsPerMillimetre * (1 + about(move.scale ?? 0.006)),
  };
}

function lampLight(distance: number): Lighting {
  return sideLight({ bearing: 315, height: 45, distance: 600, size: 100, strength: 1.4 }, distance);
}

function fieldLight(seed: number, glare: number, scale: number): Lighting {
  const next = numbersFrom(seedOf('field', seed));
  return axialLight(
    {
      luminance: 1,
      distance: 400,
      half: 140,
      slope: [(2 * next() - 1) * (0.1 + glare), (2 * next() - 1) * (0.1 + glare)],
      hotSpot: 0.05 + 0.6 * glare,
      glass: { index: 1.52, thickness: 1, angle: 45 },
    },
    scale,
  );
}

function capture(
  plate: Plate,
  view: View,
  lighting: Lighting,
  gain: number,
  noise: number,
  blur: number,
  seed: number,
): Plane16 {
  const data = new Uint16Array(view.width * view.height);
  const sensor = { gain, fullWell: 45_000, readNoise: 4, noise, depth: 16 as const, seed };
  photographSeries(
    plate,
    { view, blur, fallOff: true },
    [{ lighting, sensor }],
    (_, y, [r, g, b]) => {
      for (let x = 0; x < view.width; x += 1) {
        const light = 0.2126 * r[x] + 0.7152 * g[x] + 0.0722 * b[x];
        data[y * view.width + x] = Math.round(65535 * light);
      }
    },
  );
  return { width: view.width, height: view.height, data };
}
