/**
 * What the reader is looking at, and its form in an address:
 * `#view=slide&of=axial,normal&xywh=pixel:812,440,300,220`.
 *
 * An address is outside data: anything in it that cannot be read is ignored, and what it names
 * that this plate does not have is reported in words by {@link settleState}.
 *
 * References
 * - W3C Media Fragments URI 1.0 (2012), section 4.2.2: `xywh=` with `pixel:` (the default) or
 *   `percent:`, integers. A region that cannot be read is ignored.
 */
import { isRoom, type Room } from '../imaging/tilt.ts';
import { differencePair, viewWith } from './mode-views.ts';
import type { StageData } from './stage-data.ts';

export const modes = ['look', 'slide', 'beside', 'tilt', 'lamp', 'range', 'difference'] as const;
export type Mode = (typeof modes)[number];

/** What Lamp draws: the plate as lit, its surface alone, or the nearest frame as it was taken. */
export const renderings = ['lit', 'relief', 'slope', 'gloss', 'frame'] as const;
export type Rendering = (typeof renderings)[number];

/** A rectangle by its edges, pixels of the plate's frame: x = 0 is the left edge. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface ViewState {
  readonly mode: Mode;
  /** Ids of the views, first and second. */
  readonly of: readonly string[];
  /** What is in sight; null is the whole plate. */
  readonly region: Region | null;
  /** How far along the divider stands, 0 to 1. */
  readonly divider: number;
  /** How far the divider is turned clockwise, degrees; 0 stands upright. */
  readonly turn: number;
  /** What the divider keeps its place on. */
  readonly fixed: 'screen' | 'plate';
  /** How far the plate is tilted, degrees. */
  readonly tilt: number;
  readonly room: Room;
  /** Where Lamp's lamp stands, degrees. */
  readonly bearing: number;
  readonly height: number;
  readonly rendering: Rendering;
  /** Exposure of Range, stops; null shows the rendering as it was made. */
  readonly stops: number | null;
  /** Light shown as white by Range. */
  readonly white: number;
  /** Range shows what this frame of the bracket would have, counted from 1. */
  readonly frame: number | null;
  /** Beside shows another plate as its second picture. */
  readonly with: string | null;
  /** Which view of the other plate. */
  readonly withView: string | null;
  /** Shown turned left for right. */
  readonly corrected: boolean;
  readonly spot: string | null;
  /** Digests that the pictures had when the address was made. */
  readonly was: readonly string[];
}

type Unread = { unit: 'pixel' | 'percent'; values: readonly [number, number, number, number] };
export type AddressState = Partial<Omit<ViewState, 'region'>> & { readonly region?: Unread };

function readRegion(text: string): Unread | null {
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

/** The state in which a plate opens: both readings side by side where there are both. */
export function firstState(data: StageData, opening: boolean): ViewState {
  const of = data.pair
    ? [data.pair.positive, data.pair.negative]
    : data.views.slice(0, 2).map((v) => v.id);
  return {
    mode: data.pair && opening ? 'tilt' : of.length > 1 ? 'beside' : 'look',
    of,
    region: null,
    divider: 0.5,
    turn: 0,
    fixed: 'screen',
    tilt: 0,
    room: 'window',
    bearing: 315,
    height: 45,
    rendering: 'lit',
    stops: null,
    white: 1,
    frame: null,
    with: null,
    withView: null,
    corrected: false,
    spot: null,
    was: [],
  };
}

/** A region within the frame, whole pixels; null when nothing of it is left. */
export function clipRegion(
  region: Region,
  frame: { readonly width: number; readonly height: number },
): Region | null {
  const left = Math.max(0, Math.round(region.x));
  const top = Math.max(0, Math.round(region.y));
  const width = Math.min(frame.width, Math.round(region.x + region.width)) - left;
  const height = Math.min(frame.height, Math.round(region.y + region.height)) - top;
  return width > 0 && height > 0 ? { x: left, y: top, width, height } : null;
}

function scaledRegion(region: Unread, frame: StageData['frame']): Region | null {
  const [x, y, width, height] = region.values;
  const [sx, sy] = region.unit === 'percent' ? [frame.width / 100, frame.height / 100] : [1, 1];
  return clipRegion({ x: x * sx, y: y * sy, width: width * sx, height: height * sy }, frame);
}

/** Lay what an address says over the opening state, and say in words what could not be had. */
export function settleState(
  data: StageData,
  address: AddressState,
  opening: ViewState,
): { readonly state: ViewState; readonly said: readonly string[] } {
  const said: string[] = [];
  const known = (id: string) => data.views.some((v) => v.id === id);
  // With another plate, the second view named is that plate's.
  const other = address.with !== undefined;
  const asked = other ? (address.of ?? []).slice(0, 1) : (address.of ?? []);
  for (const id of asked.filter((name) => !known(name)))
    said.push(`This plate has no view “${id}” any more.`);
  const spot = data.spots.find((s) => s.id === address.spot);
  if (address.spot !== undefined && spot === undefined)
    said.push(`This plate has no spot “${address.spot}” any more.`);
  const spotViews = typeof spot?.view === 'string' && known(spot.view) ? [spot.view] : [];
  const first = asked.some(known) ? asked.filter(known) : spotViews;
  const of = [...new Set([...first, ...opening.of])].slice(0, 2);
  const mode = modeFor(data, address.mode ?? (spot ? 'look' : opening.mode), of, said);
  const frame = frameOf(data, mode, of);
  const asRegion = address.region ? scaledRegion(address.region, frame) : (spot?.region ?? null);
  const changed = asked.some(
    (id, i) => address.was?.[i] !== undefined && digestOf(data, id) !== address.was[i],
  );
  if (changed)
    said.push('The picture has changed since this address was made; the same place is shown.');
  return {
    said,
    state: {
      ...opening,
      ...Object.fromEntries(Object.entries(address).filter(([, value]) => value !== undefined)),
      mode,
      of: viewsOfMode(data, mode, of),
      region: asRegion,
      spot: spot?.id ?? null,
      withView: other ? (address.of?.[1] ?? null) : null,
      was: [],
    },
  };
}

function digestOf(data: StageData, id: string): string | undefined {
  return data.views.find((v) => v.id === id)?.digest;
}

/** The mode asked for, or the nearest one that these views allow, with the reason. */
function modeFor(data: StageData, asked: Mode, of: readonly string[], said: string[]): Mode {
  const apart = data.views.find((v) => of.includes(v.id) && !v.registered);
  if (asked === 'tilt' && data.pair === null) {
    said.push('Tilt needs a positive and a negative in register; this plate has no such pair.');
    return 'look';
  }
  if (asked === 'slide' && apart !== undefined && of.length > 1) {
    said.push(`“${apart.name}” cannot be laid under a divider: ${apart.why ?? 'not aligned'}.`);
    return 'beside';
  }
  if (asked === 'lamp' && viewWith(data, 'lamp') === null) {
    said.push('Lamp needs a set of frames under many lamps; this plate has none.');
    return 'look';
  }
  if (asked === 'range' && viewWith(data, 'gain') === null) {
    said.push('Range needs a merged bracket of exposures; this plate has none.');
    return 'look';
  }
  if (asked === 'difference' && differencePair(data) === null) {
    said.push('Difference needs two sittings in register; this plate has no such pair.');
    return 'look';
  }
  const single: readonly Mode[] = ['look', 'lamp', 'range'];
  return of.length < 2 && !single.includes(asked) ? 'look' : asked;
}

/** What a mode shows, given what is asked for. */
function viewsOfMode(data: StageData, mode: Mode, of: readonly string[]): readonly string[] {
  if (mode === 'tilt' && data.pair) return [data.pair.positive, data.pair.negative];
  const own = mode === 'lamp' ? 'lamp' : mode === 'range' ? 'gain' : null;
  const layered = own === null ? null : viewWith(data, own, of[0]);
  if (layered !== null) return [layered.id, ...of.filter((id) => id !== layered.id)].slice(0, 2);
  return mode === 'difference' ? (differencePair(data, of) ?? of) : of;
}

/** The pixels that regions count in: the plate's frame, or a picture's own when it is not in it. */
export function frameOf(
  data: StageData,
  mode: Mode,
  of: readonly string[],
): { readonly width: number; readonly height: number } & StageData['frame'] {
  const first = data.views.find((v) => v.id === of[0]);
  if (mode === 'tilt' || first === undefined || first.registered) return data.frame;
  return {
    width: first.width,
    height: first.height,
    pixelsPerMillimetre: null,
    scaleUncertainty: null,
    scaleFrom: 'this picture is not in the plate’s frame',
  };
}
