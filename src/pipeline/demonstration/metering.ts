/** Exposure as a careful person sets it: by the brightest parts of the picture that matter. */
import { photographSeries, type Lighting } from '../../imaging/render/photograph.ts';
import type { Plate } from '../../imaging/render/plate.ts';
import { technicalCamera } from '../../imaging/render/sensor.ts';
import type { View } from '../../imaging/render/view.ts';
import type { SetupRecord } from '../../records/sitting.ts';
import { lightingOf } from './lighting-of.ts';

/** The brightest 0.4 % of the picture lie at or above this share of the clip level. */
const brightShare = 0.004;
const level = 0.82;

/** The light that a set is metered under: its own, or a lamp at 45 degrees where it moves. */
export function meteringLight(setup: SetupRecord, view: View): Lighting {
  const moves = setup.kind === 'normal' && setup.lamps[0]?.height === undefined;
  return lightingOf(setup, view, moves ? { bearing: 315, height: 45 } : null);
}

/** Sensor gain for a set-up, from a small picture of it without noise. */
export function meteredGain(plate: Plate, view: View, lighting: Lighting): number {
  const factor = Math.min(1, 220 / view.width);
  const small = {
    ...view,
    width: Math.round(view.width * factor),
    height: Math.round(view.height * factor),
    pixelsPerMillimetre: view.pixelsPerMillimetre * factor,
  };
  const standing = { view: small, blur: 0, fallOff: true };
  // Low enough that nothing clips.
  const gain = 1e-3;
  const sensor = { ...technicalCamera, noise: 0, gain, depth: 16 as const, seed: 0 };
  const found: number[] = [];
  photographSeries(plate, standing, [{ lighting, sensor }], (_, _y, [r, g, b]) => {
    for (let x = 0; x < r.length; x += 1) found.push(Math.max(r[x], g[x], b[x]) / gain);
  });
  found.sort((a, b) => a - b);
  const bright = found[Math.floor((found.length - 1) * (1 - brightShare))];
  return level / Math.max(bright, 1e-6);
}
