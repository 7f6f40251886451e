/** What the reader is looking at. Its form in an address is in `view-address.ts`. */
import type { Room } from '../imaging/tilt.ts';
import type { StageData } from './stage-data.ts';
import { words } from './words.ts';

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
    scaleFrom: words.picture.noFrame,
  };
}
