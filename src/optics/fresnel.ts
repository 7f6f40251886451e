/**
 * How much light a clean, transparent surface reflects, for each polarisation.
 *
 * References
 * - Fresnel's equations in the form Rs = ((cos i - n cos t)/(cos i + n cos t))^2,
 *   Rp = ((n cos i - cos t)/(n cos i + cos t))^2, sin t = sin i / n; the same as
 *   Smith, W. J. Modern Optical Engineering, 4th ed., equation 11.1.
 */

/** Reflected share of light, by polarisation: `s` across and `p` in the plane of incidence. */
export interface Polarised {
  readonly s: number;
  readonly p: number;
}

/** Mean of both polarisations: what happens to unpolarised light. */
export function unpolarised({ s, p }: Polarised): number {
  return (s + p) / 2;
}

/**
 * Reflectance of one surface, seen from the side of index 1.
 *
 * @param index Refractive index behind the surface, above 1.
 * @param degrees Angle of incidence from the normal, 0 to 90.
 * @throws RangeError when an argument is outside its range.
 */
export function fresnelReflectance(index: number, degrees: number): Polarised {
  if (!(index >= 1)) throw new RangeError(`The refractive index is ${index}; expected 1 or more.`);
  if (!(degrees >= 0 && degrees <= 90)) {
    throw new RangeError(`The angle of incidence is ${degrees}; expected 0 to 90 degrees.`);
  }
  const i = (degrees * Math.PI) / 180;
  const cosI = Math.cos(i);
  const cosT = Math.sqrt(1 - (Math.sin(i) / index) ** 2);
  const s = (cosI - index * cosT) / (cosI + index * cosT);
  const p = (index * cosI - cosT) / (index * cosI + cosT);
  return { s: s * s, p: p * p };
}

/** Angle of incidence at which no p-polarised light is reflected, degrees. */
export function brewsterAngle(index: number): number {
  return (Math.atan(index) * 180) / Math.PI;
}
