/** The sentences of Range. */
import type { GainLayer } from '../../records/layer.ts';
import type { ViewState } from '../view-state.ts';

/** "1/125 s", "0.5 s", "4 s" */
export function exposureWords(seconds: number): string {
  if (seconds >= 0.3) return `${Number(seconds.toPrecision(2))} s`;
  return `1/${Math.round(1 / seconds)} s`;
}

/** "+2.0 stops", "−1.5 stops" */
export function stopsWords(stops: number): string {
  const size = Math.abs(stops).toFixed(1);
  return `${size === '0.0' ? '' : stops < 0 ? '−' : '+'}${size} stops`;
}

/** @param white Light, after the exposure, that is shown as white. */
export function whiteWords(white: number): string {
  return `light ${Number(white.toPrecision(3))} is white`;
}

/** What is seen, in a few words. */
export function rangeCaption(
  state: Pick<ViewState, 'stops'>,
  frame: GainLayer['frames'][number] | null,
): string {
  if (frame !== null)
    return `Merged exposures, as one of ${exposureWords(frame.seconds)} would have it`;
  return state.stops === null
    ? 'Merged exposures, as rendered'
    : `Merged exposures, light at ${stopsWords(state.stops)}`;
}

export function standingWords(
  state: Pick<ViewState, 'stops' | 'white'>,
  frame: GainLayer['frames'][number] | null,
): string {
  if (frame !== null)
    return `As one exposure of ${exposureWords(frame.seconds)} would have it: what is brighter than its white is clipped.`;
  if (state.stops === null)
    return 'As rendered for the screen: the wide range is pressed together, so brightness is not in proportion to light.';
  return `Merged light at ${stopsWords(state.stops)}: on this screen brightness is in proportion to light, and what is above the white point is clipped.`;
}

export function rangeNote({ gain, frames }: Pick<GainLayer, 'gain' | 'frames'>): string {
  const span = gain.headroom + gain.footroom;
  return `Merged from ${frames.length} exposures, ${exposureWords(frames[0].seconds)} to ${exposureWords(frames[frames.length - 1].seconds)}; from the noise to the brightest light ${span.toFixed(1)} stops.`;
}

/** @param above Share of what is in sight above the white point; null where nothing is in sight. */
export function shareWords(above: number | null, stops: number | null): string {
  if (above === null) return 'Light of what is in sight, in stops. Nothing has come yet.';
  const begin = 'Light of what is in sight, in stops; heights are square roots.';
  if (stops === null) return begin;
  const percent = 100 * above;
  return `${begin} ${percent < 0.05 ? 'Nothing' : `${percent.toFixed(1)} %`} lies above the white point.`;
}
