/**
 * What the mirror looks at: a dark cloth with the lens in it, a bright card, an even field that
 * a sheet of glass throws on the plate, a window.
 *
 * Each surround is a plane parallel to the plate; a pixel's mirror shows the point where its
 * reflected ray meets it.
 */
import type { PlateRow } from './plate-row.ts';
import type { Reflectances } from './reflectance.ts';

export interface Surround {
  /** `field`: an even source seen through glass, without the lens; `card`: bright with the lens in it. */
  readonly kind: 'dark' | 'card' | 'field' | 'window';
  /** Luminance of its bright part. */
  readonly luminance: number;
  /** From the plate, mm, along the path of light. */
  readonly distance: number;
  /** Half of its width, mm. */
  readonly half: number;
  /** Luminance of everything that is not bright. */
  readonly dark: number;
  /** Radius of the dark lens as the plate sees it, mm; 0 where it does not. */
  readonly lens: number;
  /** Change of luminance from one side to the other, relative, along x and along y. */
  readonly slope: readonly [number, number];
  /** How much brighter the middle is than the edge, relative. */
  readonly hotSpot: number;
}

/** The lens fades out at this many of its radii. */
const lensEdge = 1.08;
/** Share of the lens's own darkness that it reflects: glass and blackened metal. */
const lensLuminance = 0.0006;

/** Luminance of the surround where a ray meets it, mm from the axis, y down. */
export function surroundLuminance(surround: Surround, x: number, y: number): number {
  const { half, luminance, dark, lens } = surround;
  const held = lens > 0 ? softStep((Math.sqrt(x * x + y * y) - lens) / ((lensEdge - 1) * lens)) : 1;
  let value = dark;
  if (surround.kind !== 'dark') {
    const u = x / half;
    const v = y / half;
    const even =
      1 + 0.5 * (surround.slope[0] * u + surround.slope[1] * v) + surround.hotSpot * bump(u, v);
    const edge = softStep((1 - Math.max(Math.abs(u), Math.abs(v))) / 0.03);
    const bars = surround.kind === 'window' ? windowBars(u, v) : 1;
    value += (luminance * even * bars - dark) * edge;
  }
  return lensLuminance + (value - lensLuminance) * held;
}

/** Highest at the centre of the field, 0 on average over its square, -0.24 in its corners. */
function bump(u: number, v: number): number {
  return Math.exp(-(u * u + v * v)) - meanBump;
}
/** Mean of exp(-(u^2 + v^2)) over the square of half-width 1: (sqrt(pi)/2 erf 1)^2. */
const meanBump = 0.55775;

function windowBars(u: number, v: number): number {
  const bar = (t: number) => softStep((Math.abs(t) - 0.05) / 0.03);
  return bar(u) * bar(Math.abs(v) - 0.36);
}

function softStep(t: number): number {
  if (t <= -1) return 0;
  if (t >= 1) return 1;
  return 0.5 + t * (0.75 - 0.25 * t * t);
}

/** Share of the hemisphere's projected area that a square field fills, seen from below its centre. */
export function viewFactor(surround: Surround): number {
  if (surround.kind === 'dark') return 0;
  const a = surround.half / surround.distance;
  const s = Math.sqrt(1 + a * a);
  // Parallel small plate and square: four corner rectangles (standard view factor, closed form).
  return ((4 / (2 * Math.PI)) * 2 * a * Math.atan(a / s)) / s;
}

/**
 * Add what the surround gives to a row: its image in the mirror, a blurred mean of it in the
 * polishing lines and scratches, and what the particles scatter of it.
 *
 * @param camera From the plate's centre to the lens, mm.
 * @param through Share of the field that comes back by way of the glass, 1 without glass.
 */
export function addSurround(
  out: readonly [Float64Array, Float64Array, Float64Array],
  line: PlateRow,
  surface: Reflectances,
  surround: Surround,
  camera: number,
  through: number,
  offset: readonly [number, number] = [0, 0],
): void {
  const filled = viewFactor(surround);
  const everywhere = surround.dark + (surround.luminance - surround.dark) * filled;
  // Half of what a lobe spreads still falls into a field wider than itself.
  const spread = surround.dark + (surround.luminance - surround.dark) * Math.min(1, 0.5 + filled);
  const diffuseLight = surround.kind === 'dark' ? surround.dark : everywhere;
  const spreadLight = surround.kind === 'dark' ? surround.dark : spread;
  const ratio = surround.distance / camera;
  const [or, og, ob] = out;
  const [mr, mg, mb] = surface.mirror;
  const [dr, dg, db] = surface.diffuse;
  const { gloss, scratch, slopeX, slopeY } = line;
  // Over cloth nothing but the lens is seen, and that only near the axis.
  const beyondLens = surround.kind === 'dark' ? (lensEdge * surround.lens) ** 2 : Infinity;
  const [offsetX, offsetY] = offset;
  const twice = 2 * surround.distance;
  for (let i = 0; i < line.length; i += 1) {
    const x = line.x[i] - offsetX;
    const y = line.y[i] - offsetY;
    const qx = x + ratio * x - twice * slopeX[i];
    const qy = y + ratio * y - twice * slopeY[i];
    const spreading = gloss[i] + scratch[i];
    const lost = spreading < 1 ? spreading : 1;
    const alone = qx * qx + qy * qy >= beyondLens;
    const shown = alone ? surround.dark : surroundLuminance(surround, qx, qy);
    const seen = shown * (1 - lost) + spreadLight * lost;
    or[i] += through * (mr[i] * seen + dr[i] * diffuseLight);
    og[i] += through * (mg[i] * seen + dg[i] * diffuseLight);
    ob[i] += through * (mb[i] * seen + db[i] * diffuseLight);
  }
}

/** Add an even panel behind a plate of glass. */
export function addPanel(
  out: readonly [Float64Array, Float64Array, Float64Array],
  line: PlateRow,
  surface: Reflectances,
  luminance: number,
): void {
  for (let i = 0; i < line.length; i += 1) {
    const light = surface.through[i] * luminance;
    for (let c = 0; c < 3; c += 1) out[c][i] += light;
  }
}
