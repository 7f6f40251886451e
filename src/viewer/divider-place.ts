/** The divider of a state on the screen, and how far a place of the plate lies from it. */
import { dividerLine, lineOnScreen, type Line } from './divider-line.ts';
import { toScreen, type Box, type Placing } from './placing.ts';
import type { Region, ViewState } from './view-state.ts';

/** CSS pixels of the picture's box. */
export function lineFor(
  state: Pick<ViewState, 'fixed' | 'divider' | 'turn'>,
  frame: Box,
  box: Region,
  placing: Placing,
): Line {
  if (state.fixed === 'screen') return dividerLine(box, state.divider, state.turn);
  const { width, height } = frame;
  const onPlate = dividerLine({ x: 0, y: 0, width, height }, state.divider, state.turn);
  return lineOnScreen(onPlate, placing);
}

/** Distance of a point of the plate, plate pixels, towards the second view. */
export function distanceFrom(line: Line, placing: Placing): (x: number, y: number) => number {
  return (x, y) => {
    const [sx, sy] = toScreen(placing, x, y);
    return (line.nx * sx + line.ny * sy - line.d) / placing.scale;
  };
}
