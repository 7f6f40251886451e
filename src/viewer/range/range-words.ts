/** The sentences of Range. */
import type { GainLayer } from '../../records/layer.ts';
import type { ViewState } from '../view-state.ts';
import { measures, words } from '../words.ts';

/** "1/125 s", "0.5 s", "4 s" */
export function exposureWords(seconds: number): string {
  if (seconds >= 0.3) return `${measures.figure(seconds, 2)}\u202fs`;
  return `1/${Math.round(1 / seconds)}\u202fs`;
}

/** "+2.0 stops", "−1.5 stops" */
export function stopsWords(stops: number): string {
  const size = Math.abs(stops) < 0.05 ? 0 : stops;
  return words.range.stops(`${size > 0 ? '+' : ''}${measures.fixed(size, 1)}`);
}

/** @param white Light, after the exposure, that is shown as white. */
export function whiteWords(white: number): string {
  return words.range.white(measures.figure(white));
}

/** What is seen, in a few words. */
export function rangeCaption(
  state: Pick<ViewState, 'stops'>,
  frame: GainLayer['frames'][number] | null,
): string {
  const said = words.caption;
  if (frame !== null) return said.exposure(exposureWords(frame.seconds));
  return state.stops === null ? said.rendered : said.merged(stopsWords(state.stops));
}

export function standingWords(
  state: Pick<ViewState, 'stops' | 'white'>,
  frame: GainLayer['frames'][number] | null,
): string {
  if (frame !== null) return words.range.oneExposure(exposureWords(frame.seconds));
  if (state.stops === null) return words.range.rendered;
  return words.range.merged(stopsWords(state.stops));
}

export function rangeNote({ gain, frames }: Pick<GainLayer, 'gain' | 'frames'>): string {
  const span = words.range.stops(measures.fixed(gain.headroom + gain.footroom, 1));
  const [shortest, longest] = [frames[0], frames[frames.length - 1]].map(({ seconds }) =>
    exposureWords(seconds),
  );
  return words.range.note(frames.length, shortest, longest, span);
}

/** @param above Share of what is in sight above the white point; null where nothing is in sight. */
export function shareWords(above: number | null, stops: number | null): string {
  const said = words.range;
  if (above === null) return said.waiting;
  if (stops === null) return said.histogram;
  const some = above < 0.0005 ? null : measures.percent(above);
  return `${said.histogram} ${said.above(some)}`;
}
