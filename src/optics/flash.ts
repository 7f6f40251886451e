/**
 * Flash or a lamp that burns: what a flash must have to replace the lamp, and which times keep
 * a lamp's flicker out of the picture.
 *
 * A flash gives the same light seconds (the dose of a correct exposure does not depend on how
 * it is spread in time), freezes a stand that swings, and cannot be looked at beforehand. A lamp
 * can; on the mains its light swings twice in each period.
 *
 * References
 * - Guide number: f-number times distance in metres at ISO 100 for a correct exposure; inverse
 *   square law. ISO 1230 (its text not seen).
 */

/** Guide number, metres at ISO 100, for an f-number at a magnification and a lamp distance in mm. */
export function guideNumber(fNumber: number, m: number, distance: number, iso: number): number {
  return (fNumber * (1 + m) * (distance / 1000)) / Math.sqrt(iso / 100);
}

/** f-number for a guide number at a distance in mm, from afar. */
export function flashFNumber(guide: number, distance: number, iso: number): number {
  return (guide / (distance / 1000)) * Math.sqrt(iso / 100);
}

/** Largest relative error of brightness from a flicker of full depth, for a time in seconds. */
export function flickerError(seconds: number, mainsHertz: number): number {
  const swings = 2 * mainsHertz * seconds;
  // Light 1 + cos: over a time of n swings the mean differs by at most |sin(pi n)|/(pi n).
  return Math.abs(Math.sin(Math.PI * swings)) / (Math.PI * swings);
}
