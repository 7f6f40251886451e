/**
 * A view state as the part of an address after `#`:
 * `#view=slide&of=axial,normal&xywh=pixel:812,440,300,220`.
 *
 * An address is outside data: anything in it that cannot be read is ignored, and what it names
 * that this plate does not have is reported in words by `settleState`.
 *
 * References
 * - W3C Media Fragments URI 1.0 (2012), section 4.2.2: `xywh=` with `pixel:` (the default) or
 *   `percent:`, integers. A region that cannot be read is ignored.
 */
import { isRoom } from '../imaging/tilt.ts';
import { modes, renderings, type ViewState } from './view-state.ts';

/** A region as it was written, before the picture's size is known. */
export type WrittenRegion = {
  unit: 'pixel' | 'percent';
  values: readonly [number, number, number, number];
};
export type AddressState = Partial<Omit<ViewState, 'region'>> & { readonly region?: WrittenRegion };

function readRegion(text: string): WrittenRegion | null {
  const match = /^(?:(pixel|percent):)?(\d{1,7}),(\d{1,7}),(\d{1,7}),(\d{1,7})$/.exec(text);
  if (!match) return null;
  const [x, y, width, height] = match.slice(2).map(Number);
  if (width === 0 || height === 0) return null;
  const unit = match[1] === 'percent' ? 'percent' : 'pixel';
  if (unit === 'percent' && (x + width > 100 || y + height > 100)) return null;
  return { unit, values: [x, y, width, height] };
}

function readNumber(text: string | null, low: number, high: number): number | undefined {
  if (text === null || !/^-?\d{1,4}(\.\d{1,4})?$/.test(text)) return undefined;
  const value = Number(text);
  return value >= low && value <= high ? value : undefined;
}

/** Several numbers, each within its limits. */
function readNumbers(
  text: string | null,
  limits: readonly (readonly [low: number, high: number])[],
): number[] | undefined {
  const words = text?.split(',') ?? [];
  const values = limits.map(([low, high], i) => readNumber(words[i] ?? null, low, high));
  return values.every((v) => v !== undefined) ? values : undefined;
}

function readList(text: string | null, item: RegExp): string[] | undefined {
  const items = text?.split(',').filter((word) => item.test(word)) ?? [];
  return items.length > 0 ? items.slice(0, 2) : undefined;
}

/** Read the part of an address after `#`. Null when it holds no view state at all. */
export function parseViewState(fragment: string): AddressState | null {
  const fields = new URLSearchParams(fragment.replace(/^#/, ''));
  const named = ['view', 'of', 'xywh', 'spot'];
  if (!named.some((name) => fields.has(name))) return null;
  const region = readRegion(fields.get('xywh') ?? '');
  const room = fields.get('room');
  const percent = readNumber(fields.get('divider'), 0, 100);
  const lamp = readNumbers(fields.get('lamp'), [
    [0, 360],
    [0, 90],
  ]);
  return {
    mode: modes.find((mode) => mode === fields.get('view')),
    of: readList(fields.get('of'), /^[a-z0-9-]{1,100}$/),
    ...(region === null ? {} : { region }),
    divider: percent === undefined ? undefined : Math.round(percent * 10) / 1000,
    turn: readNumber(fields.get('turn'), -90, 90),
    fixed: fields.get('on') === 'plate' ? 'plate' : undefined,
    tilt: readNumber(fields.get('tilt'), 0, 90),
    room: room !== null && isRoom(room) ? room : undefined,
    bearing: lamp?.[0],
    height: lamp?.[1],
    rendering: renderings.find((word) => word === fields.get('as')),
    stops: readNumber(fields.get('stops'), -30, 30),
    white: readNumber(fields.get('white'), 0.001, 1000),
    frame: readNumber(fields.get('frame'), 1, 999),
    with: readList(fields.get('with'), /^[a-z0-9-]{1,100}$/)?.[0],
    corrected: fields.get('handed') === 'corrected' ? true : undefined,
    spot: readList(fields.get('spot'), /^[a-z0-9-]{1,100}$/)?.[0],
    was: readList(fields.get('was'), /^[0-9a-f]{12}$/),
  };
}

function short(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}

/** Write a state as the part of an address after `#`; what has its usual value is left out. */
export function formatViewState(state: ViewState): string {
  const other = state.mode === 'beside' && state.with !== null && state.withView !== null;
  const of = other ? [state.of[0], state.withView] : state.of;
  const fields = [`view=${state.mode}`, `of=${of.join(',')}`];
  if (state.region !== null) {
    const { x, y, width, height } = state.region;
    fields.push(`xywh=pixel:${[x, y, width, height].map((v) => short(v, 0)).join(',')}`);
  }
  if (state.mode === 'slide') {
    if (state.divider !== 0.5) fields.push(`divider=${short(state.divider * 100, 1)}`);
    if (state.turn !== 0) fields.push(`turn=${short(state.turn, 1)}`);
    if (state.fixed === 'plate') fields.push('on=plate');
  }
  if (state.mode === 'tilt') {
    fields.push(`tilt=${short(state.tilt, 1)}`);
    if (state.room !== 'window') fields.push(`room=${state.room}`);
  }
  if (state.mode === 'lamp') {
    fields.push(`lamp=${short(state.bearing, 1)},${short(state.height, 1)}`);
    if (state.rendering !== 'lit') fields.push(`as=${state.rendering}`);
  }
  if (state.mode === 'range') {
    if (state.stops !== null) fields.push(`stops=${short(state.stops, 2)}`);
    if (state.white !== 1) fields.push(`white=${short(state.white, 4)}`);
    if (state.frame !== null) fields.push(`frame=${state.frame}`);
  }
  if (state.mode === 'beside' && state.with !== null) fields.push(`with=${state.with}`);
  if (state.corrected) fields.push('handed=corrected');
  if (state.spot !== null) fields.push(`spot=${state.spot}`);
  if (state.was.length > 0) fields.push(`was=${state.was.join(',')}`);
  return `#${fields.join('&')}`;
}
