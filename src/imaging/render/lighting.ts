/** Set-ups as lamps and surrounds: the ones that the demonstration and the tests use. */
import { doublePass, sheetGhost } from '../../optics/glass-sheet.ts';
import { type Lamp } from './lamp.ts';
import { type Lighting } from './photograph.ts';
import { type Surround } from './surround.ts';

/** Black cloth all round, the lens looking through a hole in it. */
export const darkSurround: Surround = {
  kind: 'dark',
  luminance: 0.004,
  distance: 600,
  half: 600,
  dark: 0.004,
  lens: 24,
  slope: [0, 0],
  hotSpot: 0,
};

/** One lamp, everything else dark. */
export function sideLight(lamp: Lamp, cameraDistance: number): Lighting {
  return {
    lamps: [lamp],
    surround: { ...darkSurround, distance: cameraDistance },
    panel: 0,
    glass: null,
  };
}

export interface AxialField {
  /** Luminance of the field itself. */
  readonly luminance: number;
  readonly distance: number;
  readonly half: number;
  readonly slope: readonly [number, number];
  readonly hotSpot: number;
  readonly glass: { readonly index: number; readonly thickness: number; readonly angle: number };
}

/** An even field thrown on the plate by a sheet of glass before the lens. */
export function axialLight(field: AxialField, pixelsPerMillimetre: number): Lighting {
  const { index, thickness, angle } = field.glass;
  const ghost = sheetGhost(index, angle, thickness);
  return {
    lamps: [],
    surround: {
      kind: 'field',
      luminance: field.luminance,
      distance: field.distance,
      half: field.half,
      dark: 0.004,
      lens: 0,
      slope: field.slope,
      hotSpot: field.hotSpot,
    },
    panel: 0,
    glass: {
      through: doublePass(index, angle),
      ghostPixels: ghost.displacement * pixelsPerMillimetre,
      ghostStrength: ghost.strength,
    },
  };
}
