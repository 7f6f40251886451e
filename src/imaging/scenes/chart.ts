/** A sea chart of nowhere. */
import { grain } from './noise.ts';
import { type Surface } from './solid.ts';

/** Land and sea of nowhere, with soundings and a net of bearings. */
export const chart = (seed: number): Surface => ({
  mean: 0.68,
  relief: (x, _y, z, f) => 0.0012 * grain(x * 9, 0, z * 9, seed + 3, 3, f * 9),
  albedo: (x, _y, z, f) => {
    const land = grain(x * 5 + 2, 0, z * 5, seed, 5, f * 5) + 0.25 * Math.sin(x * 6 - 1);
    let ink = 0;
    const line = Math.max(0.0006, f * 0.6);
    // Coast: where the field crosses zero, its width from the field's slope.
    const slope =
      Math.abs(
        grain((x + 0.002) * 5 + 2, 0, z * 5, seed, 5, f * 5) -
          grain(x * 5 + 2, 0, z * 5, seed, 5, f * 5),
      ) /
        0.002 +
      0.8;
    if (Math.abs(land) / slope < line) ink = 0.7;
    if (land > 0 && land < 0.06) ink = Math.max(ink, 0.25);
    // Rhumb lines from a rose.
    const dx = x - 0.05;
    const dz = z + 0.1;
    const r = Math.hypot(dx, dz);
    const sector = Math.PI / 8;
    const a = Math.atan2(dz, dx) / sector;
    if (Math.abs(a - Math.round(a)) * sector * r < line * 0.6 && r > 0.02) ink = Math.max(ink, 0.4);
    if (Math.abs(r - 0.06) < line || Math.abs(r - 0.055) < line) ink = Math.max(ink, 0.6);
    if (r < 0.052 && Math.abs(a - Math.round(a)) < 0.35 * (1 - r / 0.055)) ink = Math.max(ink, 0.5);
    // Degrees along the border.
    const bx = Math.abs(x) - 0.4;
    if (Math.abs(bx) < line) ink = 0.6;
    const paper = 0.72 + 0.08 * grain(x * 7, 0, z * 7, seed + 5, 4, f * 7);
    return paper * (1 - ink);
  },
});
