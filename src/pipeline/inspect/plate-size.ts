/**
 * The plate's edges against its size: what the scale must be if both are right.
 */
import { quadOf } from '../../imaging/inspect/quad.ts';
import { scaleFromLength, scaleFromPlate, type Scale } from '../../imaging/inspect/scale.ts';
import type { InspectedCapture, InspectedSitting } from './inspected-sitting.ts';

export interface EdgesAndSize {
  /** The plate's sides in the base capture, pixels, across and down, and their uncertainty. */
  readonly pixels: readonly [number, number];
  readonly uncertainty: number;
  /** Recorded size as the camera sees it, mm; null when only a name is recorded, or nothing. */
  readonly millimetres: readonly [number, number] | null;
  readonly name: string | null;
  /** Scale from edges and recorded millimetres. */
  readonly scale: Scale | null;
}

/** How well recorded millimetres are known: a ruler's half millimetre. Common practice, no source. */
const rulerUncertainty = 0.5;

/** The base capture, and what its edges say; null where they were not found. */
export function edgesAndSize(sitting: InspectedSitting): EdgesAndSize | null {
  const outline = baseOf(sitting)?.measures?.outline;
  if (!outline?.ok) return null;
  const [a, b, c, d] = outline.value.corners;
  const { width, height } = quadOf([a, b, c, d]);
  const pixels = [width, height] as const;
  const { uncertainty } = outline.value;
  const size = sitting.plate?.size;
  const millimetres = Array.isArray(size) ? ([size[0], size[1]] as const) : null;
  return {
    pixels,
    uncertainty,
    millimetres,
    name: typeof size === 'string' ? size : null,
    scale: millimetres && scaleFromPlate(pixels, uncertainty, millimetres, rulerUncertainty),
  };
}

export function baseOf(sitting: InspectedSitting): InspectedCapture | undefined {
  return sitting.captures.find((c) => c.record.id === sitting.base);
}

/** How well a person marks the ends of a scale in a picture, pixels. Common practice, no source. */
const markingUncertainty = 1;

/** Scale from a photographed scale, by its first two corners, in the frame of the base. */
export function scaleFromTarget(sitting: InspectedSitting): Scale | null {
  const base = baseOf(sitting)?.measures;
  for (const { record, measures } of sitting.captures) {
    const { target } = record;
    if (target?.kind !== 'scale' || !target.corners || target.length === undefined) continue;
    if (!base || measures?.width !== base.width || measures.height !== base.height) continue;
    const [[x0, y0], [x1, y1]] = target.corners;
    return scaleFromLength(
      { value: Math.hypot(x1 - x0, y1 - y0), uncertainty: Math.SQRT2 * markingUncertainty },
      // A good ruler is off by less than a tenth of a millimetre; common practice, no source.
      { value: target.length, uncertainty: 0.05 },
    );
  }
  return null;
}

/**
 * The scale of the base capture: as stated, else from a photographed scale, else from the
 * plate's edges and its recorded size, where the two sides agree with each other.
 */
export function bestScale(
  sitting: InspectedSitting,
): (Scale & { readonly from: 'stated' | 'target' | 'plate-edges' }) | null {
  const { scale } = sitting.record;
  if (scale) {
    const { pixelsPerMillimetre, uncertainty = 0.01 * pixelsPerMillimetre } = scale;
    return { pixelsPerMillimetre, uncertainty, from: 'stated' };
  }
  const target = scaleFromTarget(sitting);
  if (target) return { ...target, from: 'target' };
  const found = edgesAndSize(sitting)?.scale;
  if (!found || found.uncertainty > 0.05 * found.pixelsPerMillimetre) return null;
  return { ...found, from: 'plate-edges' };
}

/** The plate's size as the camera sees it, mm: as recorded, else from its edges and the scale. */
export function plateMillimetres(sitting: InspectedSitting): readonly [number, number] | null {
  const edges = edgesAndSize(sitting);
  if (edges?.millimetres) return edges.millimetres;
  const scale = bestScale(sitting)?.pixelsPerMillimetre;
  return edges && scale ? [edges.pixels[0] / scale, edges.pixels[1] / scale] : null;
}
