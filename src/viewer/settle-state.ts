/**
 * From what an address asks for to what this plate can show, with a sentence for each thing that
 * could not be had.
 */
import { differencePair, viewWith } from './mode-views.ts';
import type { StageData } from './stage-data.ts';
import type { AddressState, WrittenRegion } from './view-address.ts';
import { clipRegion, frameOf, type Mode, type Region, type ViewState } from './view-state.ts';
import { words } from './words.ts';

function scaledRegion(region: WrittenRegion, frame: StageData['frame']): Region | null {
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
  for (const id of asked.filter((name) => !known(name))) said.push(words.address.noView(id));
  const spot = data.spots.find((s) => s.id === address.spot);
  if (address.spot !== undefined && spot === undefined)
    said.push(words.address.noSpot(address.spot));
  const spotViews = typeof spot?.view === 'string' && known(spot.view) ? [spot.view] : [];
  const first = asked.some(known) ? asked.filter(known) : spotViews;
  const of = [...new Set([...first, ...opening.of])].slice(0, 2);
  const mode = modeFor(data, address.mode ?? (spot ? 'look' : opening.mode), of, said);
  const frame = frameOf(data, mode, of);
  const asRegion = address.region ? scaledRegion(address.region, frame) : (spot?.region ?? null);
  const changed = asked.some(
    (id, i) => address.was?.[i] !== undefined && digestOf(data, id) !== address.was[i],
  );
  if (changed) said.push(words.address.changed);
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
    said.push(words.address.tilt);
    return 'look';
  }
  if (asked === 'slide' && apart !== undefined && of.length > 1) {
    said.push(words.address.apart(apart.name, apart.why));
    return 'beside';
  }
  if (asked === 'lamp' && viewWith(data, 'lamp') === null) {
    said.push(words.address.lamp);
    return 'look';
  }
  if (asked === 'range' && viewWith(data, 'gain') === null) {
    said.push(words.address.range);
    return 'look';
  }
  if (asked === 'difference' && differencePair(data) === null) {
    said.push(words.address.difference);
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
