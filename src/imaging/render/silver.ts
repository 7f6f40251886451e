/**
 * The colour of polished silver, bare or under a thin film, as linear sRGB reflectance.
 *
 * The lamp is taken as white and the camera as balanced on it: equal energy is brought to D65
 * by the Bradford transform, so a perfect reflector is (1, 1, 1).
 *
 * References
 * - Silver: Johnson, P. B. and Christy, R. W. (1972). Optical constants of the noble metals.
 *   Phys. Rev. B 6, 4370-4379. doi:10.1103/PhysRevB.6.4370, table I, 1.51 to 3.37 eV.
 *   The values at 1.76 eV are from memory: two public copies disagree (4.838 and 4.898).
 * - Colour matching: Wyman, C., Sloan, P.-P. and Shirley, P. (2013). Simple analytic
 *   approximations to the CIE XYZ color matching functions. JCGT 2(2), 1-11, multi-lobe fits.
 *   Coefficients from memory; tested by the integrals and the peaks.
 * - Film: silver sulphide is given n = 2.2, k = 0.25 here, between published values, which
 *   vary widely with how the film grew: common practice, no single source.
 */
import { coatedReflectance, type ComplexIndex } from '../../optics/thin-film.ts';

/** Photon energy in electronvolts, n, k. */
const johnsonChristySilver: readonly (readonly [number, number, number])[] = [
  [1.51, 0.04, 5.727],
  [1.64, 0.03, 5.242],
  [1.76, 0.04, 4.838],
  [1.88, 0.05, 4.483],
  [2.01, 0.06, 4.152],
  [2.13, 0.05, 3.858],
  [2.26, 0.06, 3.586],
  [2.38, 0.05, 3.324],
  [2.5, 0.05, 3.093],
  [2.63, 0.05, 2.869],
  [2.75, 0.04, 2.657],
  [2.88, 0.04, 2.462],
  [3.0, 0.05, 2.275],
  [3.12, 0.05, 2.07],
  [3.25, 0.05, 1.864],
  [3.37, 0.07, 1.657],
];

/** Planck's constant times the speed of light, electronvolt nanometres (CODATA 2018). */
const electronvoltNanometres = 1239.841984;

/** Index of silver; linear in photon energy between the table's rows. */
export function silverIndex(wavelength: number): ComplexIndex {
  const energy = electronvoltNanometres / wavelength;
  const table = johnsonChristySilver;
  let i = 1;
  while (i < table.length - 1 && table[i][0] < energy) i += 1;
  const [e0, n0, k0] = table[i - 1];
  const [e1, n1, k1] = table[i];
  const t = (energy - e0) / (e1 - e0);
  return { n: n0 + (n1 - n0) * t, k: k0 + (k1 - k0) * t };
}

/** The tarnish film. */
export const tarnishIndex: ComplexIndex = { n: 2.2, k: 0.25 };

/** CIE 1931 colour matching functions, fitted. Wavelength in nanometres. */
export function colourMatching(wavelength: number): readonly [x: number, y: number, z: number] {
  const lobe = (height: number, centre: number, left: number, right: number) => {
    const t = (wavelength - centre) * (wavelength < centre ? left : right);
    return height * Math.exp(-0.5 * t * t);
  };
  return [
    lobe(0.362, 442, 0.0624, 0.0374) +
      lobe(1.056, 599.8, 0.0264, 0.0323) +
      lobe(-0.065, 501.1, 0.049, 0.0382),
    lobe(0.821, 568.8, 0.0213, 0.0247) + lobe(0.286, 530.9, 0.0613, 0.0322),
    lobe(1.217, 437, 0.0845, 0.0278) + lobe(0.681, 459, 0.0385, 0.0725),
  ];
}

/**
 * Equal-energy XYZ to linear sRGB: Bradford from E to D65 (x .3127, y .3290), then IEC
 * 61966-2-1 primaries; both computed, white goes to (1, 1, 1).
 */
const equalEnergyToSrgb = [
  [3.146658, -1.666464, -0.480194],
  [-0.995522, 1.955757, 0.039765],
  [0.063595, -0.214563, 1.150968],
] as const;

/** Linear sRGB of a reflectance spectrum, not clamped; a reflectance of 1 gives (1, 1, 1). */
export function reflectedColour(
  reflectance: (wavelength: number) => number,
): readonly [r: number, g: number, b: number] {
  const sum = [0, 0, 0];
  const white = [0, 0, 0];
  for (let wavelength = 380; wavelength <= 780; wavelength += 5) {
    const matching = colourMatching(wavelength);
    const share = reflectance(wavelength);
    for (let c = 0; c < 3; c += 1) {
      sum[c] += matching[c] * share;
      white[c] += matching[c];
    }
  }
  const xyz = sum.map((value, c) => value / white[c]);
  const [r, g, b] = equalEnergyToSrgb.map(
    (row) => row[0] * xyz[0] + row[1] * xyz[1] + row[2] * xyz[2],
  );
  return [r, g, b];
}

/** Thickest film in the table, nanometres. */
export const thickestFilm = 400;

/** Linear sRGB reflectance of silver under 0, 1, 2 ... 400 nm of film, three values each, 0 to 1. */
export function filmColours(film: ComplexIndex = tarnishIndex): Float64Array {
  const table = new Float64Array((thickestFilm + 1) * 3);
  for (let thickness = 0; thickness <= thickestFilm; thickness += 1) {
    const colour = reflectedColour((wavelength) =>
      coatedReflectance(film, silverIndex(wavelength), thickness, wavelength),
    );
    // A colour outside the sRGB gamut is brought to its edge: no negative light, none above one.
    for (let c = 0; c < 3; c += 1) table[thickness * 3 + c] = Math.min(1, Math.max(0, colour[c]));
  }
  return table;
}

/**
 * The same table for a film as it grows: not equally thick everywhere within a pixel. Colours
 * are the mean over thicknesses with a standard deviation of {@link unevenFilm} of the mean one,
 * which is why old tarnish is paler than an evaporated film.
 */
export function grownFilmColours(film: ComplexIndex = tarnishIndex): Float64Array {
  const even = filmColours(film);
  const table = new Float64Array(even.length);
  for (let thickness = 0; thickness <= thickestFilm; thickness += 1) {
    const spread = Math.max(0.5, unevenFilm * thickness);
    const sum = [0, 0, 0];
    let total = 0;
    const reach = Math.ceil(3 * spread);
    for (let offset = -reach; offset <= reach; offset += 1) {
      const at = Math.min(thickestFilm, Math.max(0, thickness + offset));
      const weight = Math.exp(-0.5 * (offset / spread) ** 2);
      total += weight;
      for (let c = 0; c < 3; c += 1) sum[c] += weight * even[at * 3 + c];
    }
    for (let c = 0; c < 3; c += 1) table[thickness * 3 + c] = sum[c] / total;
  }
  return table;
}

/** Standard deviation of a grown film's thickness, relative: chosen by eye, no source. */
const unevenFilm = 0.2;
