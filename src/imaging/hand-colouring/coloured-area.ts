/** How much of a plate is coloured, between what is sure and what may be. */
import { colourClasses } from './beyond-tarnish.ts';

export interface ColouredArea {
  /** The classes with specks of sure colour called unsure: brushes leave no specks, damage does. */
  readonly classes: Uint8Array;
  /** Pixels that are coloured at least and at most. Half a pixel of the edge may be either. */
  readonly least: number;
  readonly most: number;
  /** Pixels in which nothing could be told. */
  readonly notJudged: number;
}

/** @param speck Patches of fewer pixels than this are not believed. */
export function colouredArea(found: Uint8Array, width: number, speck: number): ColouredArea {
  const classes = found.slice();
  for (const patch of patchesOf(found, width)) {
    if (patch.length < speck) for (const i of patch) classes[i] = colourClasses.unsure;
  }
  const counts = [0, 0, 0, 0];
  for (const value of classes) counts[value] += 1;
  const [notJudged, , unsure, sure] = counts;
  const edge = edgeLength(classes, width) / 2;
  return {
    ...{ classes, notJudged },
    least: Math.max(0, sure - edge),
    most: sure + unsure + edge,
  };
}

/** Connected patches of sure colour: indices of each. */
function patchesOf(classes: Uint8Array, width: number): number[][] {
  const visited = new Uint8Array(classes.length);
  const patches: number[][] = [];
  for (let start = 0; start < classes.length; start += 1) {
    if (classes[start] !== colourClasses.sure || visited[start]) continue;
    const patch = [start];
    visited[start] = 1;
    for (const i of patch) {
      const x = i % width;
      for (const near of [x > 0 ? i - 1 : i, x < width - 1 ? i + 1 : i, i - width, i + width]) {
        if (classes[near] !== colourClasses.sure || visited[near]) continue;
        visited[near] = 1;
        patch.push(near);
      }
    }
    patches.push(patch);
  }
  return patches;
}

/** Sides of pixels between sure colour and anything else. */
function edgeLength(classes: Uint8Array, width: number): number {
  let sides = 0;
  for (let i = 0; i < classes.length; i += 1) {
    const here = classes[i] === colourClasses.sure;
    const last = i % width === width - 1;
    if (!last && here !== (classes[i + 1] === colourClasses.sure)) sides += 1;
    if (i + width < classes.length && here !== (classes[i + width] === colourClasses.sure))
      sides += 1;
  }
  // A slanting edge is a staircase of pixels, longer than itself by 4 / pi on average.
  return (sides * Math.PI) / 4;
}
