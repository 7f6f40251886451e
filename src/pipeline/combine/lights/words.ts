/** What the pages say of a relightable surface and of the pictures of its shape. */
import type { LightsResult } from './relight-views.ts';
import { reliefLamp } from './slope-planes.ts';

const one = (value: number): string => value.toFixed(1);

function advice({ spacingDegrees, lamps }: LightsResult): string {
  return (
    `With ${lamps} lamps ${one(spacingDegrees)}° apart, a glint narrower than that may fall between two of them, ` +
    'where no frame saw it: it fades from one to the other and does not wander. ' +
    'More lamps, or a diffuser as wide as the spacing, would catch it.'
  );
}

export function relightMade(fit: LightsResult): string {
  const gain = fit.leftOutDecibels - fit.nearestDecibels;
  const quality =
    `A frame left out is foretold from the others to ${one(fit.leftOutDecibels)} dB, ` +
    `${one(Math.abs(gain))} dB ${gain >= 0 ? 'better' : 'worse'} than by the nearest frame.`;
  const offer = fit.free
    ? ''
    : ' That is too little to show lamps in between: only the captured ones are offered.';
  return (
    `Put together from ${fit.lamps} photographs with one lamp in as many places; ` +
    `the light between them is interpolated in display tones. ${quality}${offer} ${advice(fit)}`
  );
}

export const relightCaution =
  'Not a photograph: do not measure tone or colour here, and check a glint or a scratch against the captured frames.';

export const relightStep = 'fitting a surface to many lamps';

export const slopeMade =
  'Derived from the same photographs: which way the surface slopes and how much, from how its brightness follows the lamp. Grey is level; the colour tells which way it falls, its strength how steeply.';
export function reliefMade(exaggeration: number): string {
  return (
    `Derived: the slopes alone under a lamp that never stood there, from bearing ${reliefLamp.bearing}° at ${reliefLamp.height}° above the plate, ` +
    `${exaggeration === 1 ? 'not exaggerated' : `exaggerated ${exaggeration} times`}. The tones of the picture are gone.`
  );
}
export const glossMade =
  'Derived: how much more light the brightest lamps give than a matte surface would. Bright is polished, scratched or wet-looking; black is matte.';

export const shapeCaution =
  'Slopes are estimates from light and not a measurement of height: a tarnish edge or a drawn line can look like a step, and clipped places are less certain.';
export const glossCaution =
  'Not a measure of condition: polishing lines, scratches and bare mirror all shine.';
export const shapeStep = 'estimating slope and gloss from many lamps';

export const figures = {
  leftOut: 'A frame foretold from the others',
  nearest: 'The nearest frame in its place',
  kept: 'Frames put together again from the planes',
  spacing: 'Distance from a lamp to the next',
  planes: 'Data planes',
  clipped: 'Pixels clipped in at least one frame',
  residual: 'Light that the slopes leave unexplained',
  strength: 'Lamp strength from frame to frame, standard deviation',
  ball: 'Highlights or outline of the ball from its circle',
};
