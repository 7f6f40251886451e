/** The sentences of Lamp. */
import type { LampLayer, SlopeLayer } from '../../records/layer.ts';
import type { Direction } from '../../imaging/relight/light-place.ts';
import type { ViewState } from '../view-state.ts';
import { measures, words } from '../words.ts';
import { lampWords } from './bearing-words.ts';

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
  const said = words.caption;
  if (rendering === 'relief' || rendering === 'slope' || rendering === 'gloss')
    return said[rendering];
  if (rendering === 'frame' && frame.published) return said.frame(frame.number, lamp.lamps.length);
  return said.lamp(wordsOf(drawn), lamp.lamps.length);
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
  const said = words.lamp;
  const stands = said.stands(lampWords(state.bearing, state.height), said.from(state.bearing));
  const place = wordsOf(drawn);
  switch (state.rendering) {
    case 'frame':
      return frame.published
        ? said.frame(frame.number, place)
        : said.frameKept(frame.number, place);
    case 'relief':
      return `${stands} ${said.relief(steepest === undefined ? null : measures.figure(0.6 / steepest, 2))}`;
    case 'slope':
      return `${stands} ${said.slope(steepest === undefined ? null : measures.figure(steepest, 2))}`;
    case 'gloss':
      return `${stands} ${said.gloss}`;
    case 'lit':
      if (!lamp.free) return said.onlyFrames(frame.number, place);
      return off > same ? `${stands} ${said.nearest(place)}` : stands;
  }
}

/** How good it is. */
export function lampNote(
  lamp: Pick<
    LampLayer,
    'lamps' | 'leftOutDecibels' | 'nearestDecibels' | 'spacingDegrees' | 'clippedShare' | 'free'
  >,
  slope: Pick<SlopeLayer, 'residualPercent'> | null,
): string {
  const said = words.lamp;
  const decibels = (value: number) => `${measures.fixed(value, 1)}\u202fdB`;
  return [
    said.fit(
      lamp.lamps.length,
      `${measures.fixed(lamp.spacingDegrees, 0)}°`,
      decibels(lamp.leftOutDecibels),
      decibels(lamp.nearestDecibels),
    ),
    lamp.free ? null : said.notFree,
    lamp.clippedShare > 0.0005 ? said.clipped(measures.percent(lamp.clippedShare)) : null,
    slope && said.surface(measures.percent(slope.residualPercent / 100)),
  ]
    .filter((sentence) => sentence !== null)
    .join(' ');
}
