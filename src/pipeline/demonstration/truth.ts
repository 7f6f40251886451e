/** What is true of one rendered capture, for whoever checks what the program found out. */
import { type Homography, lightDirection } from '../../imaging/conventions.ts';
import { type Plate } from '../../imaging/render/plate.ts';
import { betweenViews } from '../../imaging/render/view.ts';
import { type Frame, type Shoot } from './shots.ts';

export interface CaptureTruth {
  readonly file: string;
  /** Takes a pixel of the capture to the plate's base capture. */
  readonly homography: Homography;
  readonly pixelsPerMillimetre: number;
  /** Signal for a luminance of 1. */
  readonly gain: number;
  /** Unit vectors towards the lamps from the plate's centre, as in `conventions.ts`. */
  readonly lamps: readonly (readonly [number, number, number])[];
  readonly plate: { readonly width: number; readonly height: number; readonly density: number };
}

export function truthOf(plate: Plate, shoot: Shoot, frame: Frame): CaptureTruth {
  return {
    file: frame.file,
    homography: betweenViews(shoot.standing.view, shoot.base),
    pixelsPerMillimetre: shoot.standing.view.pixelsPerMillimetre,
    gain: frame.take.sensor.gain,
    lamps: frame.take.lighting.lamps.map((lamp) => lightDirection(lamp.bearing, lamp.height)),
    plate: { width: plate.width, height: plate.height, density: plate.density },
  };
}
