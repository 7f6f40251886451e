/**
 * Reflectance of a metal under a thin film, at normal incidence: the colours of a tarnish rim.
 *
 * References
 * - Airy's sum for one film: r = (r01 + r12 e^(2i b)) / (1 + r01 r12 e^(2i b)), with
 *   b = 2 pi n d / wavelength and an index n + ik. Born, M. and Wolf, E. Principles of Optics,
 *   7th ed., section 1.6 (the section number is from memory).
 */

/** Refractive index n + ik; k is above 0 where light is absorbed. */
export interface ComplexIndex {
  readonly n: number;
  readonly k: number;
}

type Complex = readonly [re: number, im: number];

/**
 * Share of light that a coated metal reflects.
 *
 * @param film Index of the film.
 * @param metal Index of the metal below it.
 * @param thickness Of the film, nanometres, 0 or more.
 * @param wavelength In air, nanometres.
 * @returns 0 to 1.
 */
export function coatedReflectance(
  film: ComplexIndex,
  metal: ComplexIndex,
  thickness: number,
  wavelength: number,
): number {
  const outer = interfaceAmplitude([1, 0], [film.n, film.k]);
  const inner = interfaceAmplitude([film.n, film.k], [metal.n, metal.k]);
  const phase = (4 * Math.PI * thickness) / wavelength;
  const decay = Math.exp(-phase * film.k);
  const turn: Complex = [decay * Math.cos(phase * film.n), decay * Math.sin(phase * film.n)];
  const below = times(inner, turn);
  const through = times(outer, below);
  const sum = over([outer[0] + below[0], outer[1] + below[1]], [1 + through[0], through[1]]);
  return sum[0] * sum[0] + sum[1] * sum[1];
}

/** Amplitude reflected where light goes from one index into another, at normal incidence. */
function interfaceAmplitude(from: Complex, to: Complex): Complex {
  return over([from[0] - to[0], from[1] - to[1]], [from[0] + to[0], from[1] + to[1]]);
}

function times(a: Complex, b: Complex): Complex {
  return [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
}

function over(a: Complex, b: Complex): Complex {
  const d = b[0] * b[0] + b[1] * b[1];
  return [(a[0] * b[0] + a[1] * b[1]) / d, (a[1] * b[0] - a[0] * b[1]) / d];
}
