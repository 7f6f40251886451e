/** Pictures of slopes: as directions, and as a relief under a lamp that never stood there. */
import { lightDirection } from '../conventions.ts';

/** Linear value of a level place: half on the sRGB curve. */
const level = 0.214;

/**
 * Lambert's shading of a surface without tone of its own, linear; a level place is mid-grey.
 *
 * @param exaggeration What slopes are multiplied by.
 */
export function reliefShade(
  bearing: number,
  height: number,
  exaggeration: number,
): (slopeX: number, slopeY: number) => number {
  const [lx, ly, lz] = lightDirection(bearing, height);
  const scale = level / lz;
  return (slopeX, slopeY) => {
    const nx = -slopeX * exaggeration;
    const ny = -slopeY * exaggeration;
    const shade = ((nx * lx + ny * ly + lz) / Math.sqrt(nx * nx + ny * ny + 1)) * scale;
    return shade < 0 ? 0 : shade > 1 ? 1 : shade;
  };
}

/** Exaggeration, 1 to 20, that gives a usual slope of the surface a rise of one in four. */
export function usefulExaggeration(usual: number): number {
  return Math.min(20, Math.max(1, Math.round(0.25 / Math.max(usual, 1e-3))));
}

const third = (2 * Math.PI) / 3;

/**
 * A slope as a colour: grey where the surface is level, more coloured the steeper it is, the
 * colour telling which way it falls. Encoded red, green and blue, 0 to 1.
 */
export function slopeColour(
  slopeX: number,
  slopeY: number,
  steepest: number,
): readonly [number, number, number] {
  const size = Math.hypot(slopeX, slopeY);
  const falls = Math.atan2(-slopeX, -slopeY);
  const chroma = 0.42 * Math.min(1, size / steepest);
  return [
    0.5 + chroma * Math.cos(falls),
    0.5 + chroma * Math.cos(falls - third),
    0.5 + chroma * Math.cos(falls + third),
  ];
}
