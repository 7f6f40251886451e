/**
 * The camera over the plate: magnification, pixels per millimetre, depth of field, diffraction,
 * and the aperture at which all blurs together are least.
 *
 * References
 * - Thin lens at magnification m: lens to plate f (1 + 1/m), lens to sensor f (1 + m), exposure
 *   factor (1 + m)^2, effective f-number N (1 + m), depth of field 2 N c (1 + m)/m^2.
 * - Diameter of the first dark ring: 2.44 wavelength N'; cut-off 1/(wavelength N'). Born and
 *   Wolf, Principles of Optics, chapter 8 (from memory).
 * - Blurs added as squares, and the f-number that balances defocus and diffraction: Hansma, P. K.
 *   (1996), View camera focusing in practice, Photo Techniques, March/April (from memory).
 */

/** Middle of the visible range, mm. */
export const greenWavelength = 550e-6;

/** Magnification of a lens at a distance from the plate, both in mm. @throws RangeError */
export function magnification(focalLength: number, distance: number): number {
  if (!(distance > focalLength)) {
    throw new RangeError(
      `A lens of ${focalLength} mm cannot focus on a plate ${distance} mm away: it must be further than its focal length.`,
    );
  }
  return focalLength / (distance - focalLength);
}

/** Lens to plate for a magnification, mm. */
export function distanceFor(focalLength: number, m: number): number {
  return focalLength * (1 + 1 / m);
}

/** Pixels per millimetre of plate, from the pitch of the sensor in mm. */
export function pixelsPerMillimetre(m: number, pixelPitch: number): number {
  return m / pixelPitch;
}

/** Longer exposure through the drawn-out lens, stops. */
export function bellowsStops(m: number): number {
  return 2 * Math.log2(1 + m);
}

/** Total depth in which a blur on the sensor stays below a circle, all in mm. */
export function depthOfField(fNumber: number, circle: number, m: number): number {
  return (2 * fNumber * circle * (1 + m)) / (m * m);
}

/** Nearest distance that is sharp together with infinity, mm. */
export function hyperfocal(focalLength: number, fNumber: number, circle: number): number {
  return (focalLength * focalLength) / (fNumber * circle) + focalLength;
}

/** Diameter of the first dark ring on the sensor at an effective f-number, mm. */
export function airyDiameter(effectiveFNumber: number, wavelength = greenWavelength): number {
  return 2.44 * wavelength * effectiveFNumber;
}

/** Finest period that the lens can carry, line pairs per mm of plate. */
export function cutOff(fNumber: number, m: number, wavelength = greenWavelength): number {
  return m / (wavelength * fNumber * (1 + m));
}

export interface Blur {
  readonly fNumber: number;
  /** Diameters on the plate, mm. */
  readonly defocus: number;
  readonly diffraction: number;
  readonly pixel: number;
  /** Root of the sum of squares. */
  readonly together: number;
}

/**
 * Blurs on the plate at one aperture.
 *
 * @param depth Difference in height between the highest and the lowest place, mm; the focus lies
 *   midway.
 */
export function blurAt(fNumber: number, m: number, pixelPitch: number, depth: number): Blur {
  const defocus = ((depth / 2) * m) / (fNumber * (1 + m));
  const diffraction = airyDiameter(fNumber * (1 + m)) / m;
  const pixel = pixelPitch / m;
  return {
    fNumber,
    defocus,
    diffraction,
    pixel,
    together: Math.hypot(defocus, diffraction, pixel),
  };
}

/** The f-number that balances defocus and diffraction, not rounded. */
export function balancedFNumber(m: number, depth: number, wavelength = greenWavelength): number {
  return (m / (1 + m)) * Math.sqrt(depth / 2 / (2.44 * wavelength));
}

/** Apertures as lenses have them, in thirds of a stop from f/2.8 to f/45. */
export const usualFNumbers: readonly number[] = [
  2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40,
  45,
];

/**
 * The usual aperture with the least blur for a depth.
 *
 * @param widest Wider ones are left out: few lenses are sharp when wide open, which this sum of
 *   blurs does not know.
 */
export function bestAperture(m: number, pixelPitch: number, depth: number, widest = 0): Blur {
  const blurs = usualFNumbers
    .filter((n) => n >= widest)
    .map((n) => blurAt(n, m, pixelPitch, depth));
  return blurs.reduce((best, one) => (one.together < best.together ? one : best));
}

/** Exposure value of an aperture and a time: log2(N^2/t). */
export function exposureValue(fNumber: number, seconds: number): number {
  return Math.log2((fNumber * fNumber) / seconds);
}
