/**
 * A photograph of a plate: from the model, the light and the camera to encoded samples, row by
 * row. Everything that depends on the place is computed there, nothing is kept for the whole
 * picture but the picture itself.
 */
import { type Homography } from '../conventions.ts';
import { invert } from '../registration/homography.ts';
import { type Channels, emptyChannels, normalKernel, rowBlur } from './blur.ts';
import { addBall, type Ball } from './ball.ts';
import { colourRows } from './colouring.ts';
import { addLamp, type Lamp } from './lamp.ts';
import { markRows } from './marks.ts';
import { coverRow } from './particles.ts';
import { emptyRow, placeRow, type PlateRow } from './plate-row.ts';
import { type Plate } from './plate.ts';
import { emptyReflectances, type Reflectances, reflectRow } from './reflectance.ts';
import { insideRow, polishRow, reliefRow } from './relief.ts';
import { cosineFourth, encodeRow, exposeRow, type Sensor } from './sensor.ts';
import { grownFilmColours } from './silver.ts';
import { addPanel, addSurround, type Surround } from './surround.ts';
import { tarnishRow } from './tarnish.ts';
import { type View, viewHomography } from './view.ts';

export interface Lighting {
  readonly lamps: readonly Lamp[];
  readonly surround: Surround;
  /** Luminance of a panel behind a plate of glass. */
  readonly panel: number;
  /** The sheet of glass, as what it does: share of the field that comes back, and its ghost. */
  readonly glass: {
    readonly through: number;
    /** Pixels across, and luminance relative to the first picture. */
    readonly ghostPixels: number;
    readonly ghostStrength: number;
  } | null;
}

/** One exposure of a series. */
export interface Take {
  readonly lighting: Lighting;
  readonly sensor: Sensor;
}

/** What the exposures of a series share: plate and camera stand still, light and shutter change. */
export interface Standing {
  readonly view: View;
  /** Standard deviation of the lens's blur, pixels. */
  readonly blur: number;
  /** True where the lens falls off towards the corners. */
  readonly fallOff: boolean;
  /** A glossy black ball beside the plate. */
  readonly ball?: Ball | undefined;
}

/**
 * Photograph a plate once or several times from the same stand.
 *
 * @param take Receives rows of linear signal, 0 to 1, after blur, noise and clipping, with the
 *   number of the exposure. The arrays are used again.
 */
export function photographSeries(
  plate: Plate,
  standing: Standing,
  takes: readonly Take[],
  take: (exposure: number, y: number, row: Channels) => void,
): void {
  const { view } = standing;
  const kernel = normalKernel(standing.blur);
  const reach = (kernel.length - 1) / 2;
  const line = emptyRow(view.width + 2 * reach);
  const surface = emptyReflectances(line.length);
  const layOut = plateRows(plate, viewHomography(view), view.pixelsPerMillimetre, reach, line);
  const films = grownFilmColours();
  const around = emptyChannels(line.length);
  const light = emptyChannels(line.length);
  const copy = emptyChannels(view.width);
  // Exposures under the same light share all but the sensor.
  const lightings = [...new Set(takes.map((t) => t.lighting))];
  const alike = lightings.map((lighting, i) => i > 0 && sameSurround(lighting, lightings[i - 1]));
  const blurs = lightings.map((lighting) =>
    rowBlur(view.width, view.height, kernel, (y, row) => {
      const fall = fallOffOf(standing, y);
      takes.forEach(({ lighting: own, sensor }, exposure) => {
        if (own !== lighting) return;
        for (let c = 0; c < 3; c += 1) copy[c].set(row[c]);
        exposeRow(copy, y, sensor, fall);
        take(exposure, y, copy);
      });
    }),
  );
  for (let y = -reach; y < view.height + reach; y += 1) {
    layOut(y);
    reflectRow(surface, line, plate, films);
    lightings.forEach((lighting, i) => {
      if (!alike[i]) surroundRow(around, line, surface, standing.view, lighting);
      for (let c = 0; c < 3; c += 1) light[c].set(around[c]);
      addLights(light, line, surface, standing, lighting, y);
      blurs[i](y, light);
    });
  }
}

function fallOffOf({ view, fallOff }: Standing, y: number): Float64Array | null {
  if (!fallOff) return null;
  const focal = view.pixelsPerMillimetre * view.distance;
  const dy = y - (view.height - 1) / 2;
  const centre = (view.width - 1) / 2;
  const fall = new Float64Array(view.width);
  for (let x = 0; x < view.width; x += 1) fall[x] = cosineFourth(x - centre, dy, focal);
  return fall;
}

/** Luminance of a row without lens and sensor. */
export function lightRow(
  out: Channels,
  line: PlateRow,
  surface: Reflectances,
  standing: Pick<Standing, 'view' | 'ball'>,
  lighting: Lighting,
  y: number,
): void {
  surroundRow(out, line, surface, standing.view, lighting);
  addLights(out, line, surface, standing, lighting, y);
}

/** What the surround alone gives to a row. */
function surroundRow(
  out: Channels,
  line: PlateRow,
  surface: Reflectances,
  { distance, shift }: View,
  { surround, glass }: Lighting,
): void {
  for (const channel of out) channel.fill(0);
  addSurround(out, line, surface, surround, distance, glass?.through ?? 1, shift);
}

/** Whether two lightings differ in lamps and panel only: one row of the surround serves both. */
function sameSurround(one: Lighting, other: Lighting): boolean {
  return one.glass === null && other.glass === null && sameFields(one.surround, other.surround);
}

function sameFields(one: Surround, other: Surround): boolean {
  const keys = Object.keys(one) as (keyof Surround)[];
  return keys.every((key) => String(one[key]) === String(other[key]));
}

/** Everything else that lights a row, added to it. */
function addLights(
  out: Channels,
  line: PlateRow,
  surface: Reflectances,
  { view, ball }: Pick<Standing, 'view' | 'ball'>,
  { lamps, panel, glass }: Lighting,
  y: number,
): void {
  for (const lamp of lamps) addLamp(out, line, surface, lamp, view.distance, view.shift);
  if (panel > 0) addPanel(out, line, surface, panel);
  if (ball) addBall(out, ball, y, (line.length - view.width) / 2, lamps, view);
  if (glass) addGhost(out, glass.ghostPixels, glass.ghostStrength);
}

/** Fills in `line` for a row of the capture; rows must come in order. */
export function plateRows(
  plate: Plate,
  toPixels: Homography,
  pixelsPerMillimetre: number,
  margin: number,
  line: PlateRow,
): (y: number) => void {
  const back = invert(toPixels);
  const toMillimetres: Homography = [
    back[0],
    back[1],
    back[2] - margin * back[0],
    back[3],
    back[4],
    back[5] - margin * back[3],
    back[6],
    back[7],
    back[8] - margin * back[6],
  ];
  const space = { mottle: new Float64Array(line.length), grain: new Float64Array(line.length) };
  const mark = markRows(plate, toPixels, margin);
  const colour = colourRows(plate);
  return (y) => {
    placeRow(line, toMillimetres, y);
    insideRow(line, plate, pixelsPerMillimetre);
    coverRow(line, plate, space);
    tarnishRow(line, plate);
    reliefRow(line, plate);
    polishRow(line, plate);
    mark(line, y);
    colour(line);
  };
}

/** The sheet's second picture, beside the first. The sheet leans about the vertical, so the ghost lies across. */
function addGhost(out: Channels, pixels: number, strength: number): void {
  const whole = Math.floor(pixels);
  const part = pixels - whole;
  for (const channel of out) {
    for (let x = channel.length - 1; x > whole; x -= 1) {
      const beside = channel[x - whole] * (1 - part) + channel[x - whole - 1] * part;
      channel[x] += strength * beside;
    }
  }
}

/** Pictures of a series as encoded codes, three channels interleaved. */
export function photograph(
  plate: Plate,
  standing: Standing,
  takes: readonly Take[],
): (Uint8Array | Uint16Array)[] {
  const { width, height } = standing.view;
  const pictures = takes.map(({ sensor }) =>
    sensor.depth === 16 ? new Uint16Array(width * height * 3) : new Uint8Array(width * height * 3),
  );
  photographSeries(plate, standing, takes, (exposure, y, row) => {
    encodeRow(pictures[exposure], y * width * 3, row);
  });
  return pictures;
}
