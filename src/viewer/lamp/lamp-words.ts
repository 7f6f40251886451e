/** The sentences of Lamp. */
import type { LampLayer, SlopeLayer } from '../../records/layer.ts';
import type { Direction } from '../../imaging/relight/light-place.ts';
import type { ViewState } from '../view-state.ts';
import { fromWhere, lampWords } from './bearing-words.ts';

function wordsOf([x, y, z]: Direction): string {
  const bearing = ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
  return lampWords(bearing, (Math.asin(Math.min(1, Math.max(-1, z))) * 180) / Math.PI);
}

/** Half a degree is not worth a sentence. */
const same = 0.5;

/** What is seen, in a few words. */
export function lampCaption(
  lamp: Pick<LampLayer, 'free' | 'lamps'>,
  rendering: ViewState['rendering'],
  drawn: Direction,
  frame: { readonly number: number; readonly published: boolean },
): string {
  if (rendering === 'relief') return 'Relief of the surface, drawn from its slopes';
  if (rendering === 'slope') return 'Slope of the surface towards the lamp';
  if (rendering === 'gloss') return 'Gloss of the surface';
  if (rendering === 'frame' && frame.published)
    return `Frame ${frame.number} of ${lamp.lamps.length}, as it was taken`;
  const from = `worked out from ${lamp.lamps.length} photographs`;
  return `Under a lamp at ${wordsOf(drawn)}, ${from}`;
}

/**
 * Where the lamp stands and what is drawn.
 *
 * @param off Degrees between the lamp asked for and the one drawn. @param drawn The latter.
 */
export function standingWords(
  lamp: Pick<LampLayer, 'free'>,
  state: Pick<ViewState, 'bearing' | 'height' | 'rendering'>,
  off: number,
  drawn: Direction,
  frame: { readonly number: number; readonly published: boolean },
  steepest: number | undefined,
): string {
  const stands = `The lamp stands at ${lampWords(state.bearing, state.height)}, ${fromWhere(state.bearing)}.`;
  if (state.rendering === 'frame')
    return frame.published
      ? `Frame ${frame.number} as it was taken: lamp at ${wordsOf(drawn)}.`
      : `Lamp of frame ${frame.number}, at ${wordsOf(drawn)}; the frame itself is not published, so this is the fit at its place.`;
  if (state.rendering === 'relief')
    return `${stands} Relief: the surface alone, as if matte; slopes are drawn ${times(steepest)} as steep.`;
  if (state.rendering === 'slope')
    return `${stands} Slope: white rises towards the lamp, black falls away, level is middle grey${steepest === undefined ? '' : `; the ends are slopes of ${Number(steepest.toPrecision(2))}`}.`;
  if (state.rendering === 'gloss')
    return `${stands} Gloss: what the brightest lamps add to the matte part, brighter where a facet sends the lamp to the lens.`;
  if (!lamp.free)
    return `Only the captured lamps are offered here: this is frame ${frame.number}, at ${wordsOf(drawn)}.`;
  if (off > same)
    return `${stands} No lamp was captured out there: the plate is shown under a lamp at ${wordsOf(drawn)}, the nearest that the captured lamps enclose.`;
  return stands;
}

function times(steepest: number | undefined): string {
  return steepest === undefined ? 'more' : `${Number((0.6 / steepest).toPrecision(2))} times`;
}

/** How good it is. */
export function lampNote(
  lamp: Pick<
    LampLayer,
    'lamps' | 'leftOutDecibels' | 'nearestDecibels' | 'spacingDegrees' | 'clippedShare' | 'free'
  >,
  slope: Pick<SlopeLayer, 'residualPercent'> | null,
): string {
  const fit = `Fitted from ${lamp.lamps.length} lamps, ${lamp.spacingDegrees.toFixed(0)}° apart. A frame left out is foretold to ${lamp.leftOutDecibels.toFixed(1)} dB; its nearest neighbour in its place gives ${lamp.nearestDecibels.toFixed(1)} dB.`;
  const free = lamp.free
    ? ''
    : ' That gains too little over the frames themselves, so lamps between them are not offered.';
  const clipped =
    lamp.clippedShare > 0.0005
      ? ` ${(100 * lamp.clippedShare).toFixed(1)} % of the plate was clipped in at least one frame; there the glint was brighter than it is shown.`
      : '';
  const surface =
    slope === null
      ? ''
      : ` Relief, slope and gloss are a fit of a matte surface that leaves ${slope.residualPercent.toFixed(1)} % of its light unexplained.`;
  return `${fit}${free}${clipped}${surface}`;
}
