/**
 * Reading the viewer's canvas back: both layers alone, and every combination of them, so that
 * each can be compared with its CPU twin.
 */
import type { Page } from 'playwright-core';
import { divideCode } from '../../src/imaging/divide.ts';
import { tiltCode } from '../../src/imaging/tilt.ts';
import { zoomTo, type OpenStage } from './viewer-page.ts';

export const side = 120;
export const zooms = [0.3, 0.5, 0.8, 1, 1.37, 2, 3.3, 5, 8];
export const mixes = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, 0.37],
  [1, 4.2],
] as const;
/** Normal and offset of the lines tried; offset in CSS pixels from the middle of the read part. */
export const turns = [0, 30, -75];

export interface Reading {
  readonly first: string;
  readonly second: string;
  readonly tilted: readonly string[];
  readonly divided: readonly string[];
  /** Left and top of the read part and height of the canvas, device pixels. */
  readonly left: number;
  readonly top: number;
  readonly density: number;
}

/** Read both layers alone and every combination, in one task, at a zoom. */
export async function readAt(page: Page, zoom: number): Promise<Reading> {
  await zoomTo(page, zoom);
  return page.evaluate(
    ({ side, mixes, turns }) => {
      const viewer = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
      const { drawer } = viewer;
      const { canvas } = drawer;
      const left = Math.floor((canvas.width - side) / 2);
      const top = Math.floor((canvas.height - side) / 2);
      const density = canvas.width / canvas.clientWidth;
      // Software drawing is slow: only what is read is drawn. No pixel looks at its neighbours.
      const gl = canvas.getContext('webgl2')!;
      gl.enable(gl.SCISSOR_TEST);
      gl.scissor(left, canvas.height - top - side, side, side);
      const read = (look: unknown) => {
        drawer.look = look;
        const bytes = drawer.read(left, top, side, side);
        return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
      };
      const line = (turn: number) => {
        const t = (turn * Math.PI) / 180;
        const [nx, ny] = [Math.cos(t), Math.sin(t)];
        const middle = [(left + side / 2) / density, (top + side / 2) / density];
        return { nx, ny, d: nx * middle[0] + ny * middle[1] };
      };
      const all = {
        first: read({ kind: 'single' }),
        second: read({ kind: 'divide', line: { nx: 1, ny: 0, d: -1e5 } }),
        tilted: mixes.map(([a, b]) => read({ kind: 'tilt', a, b })),
        divided: turns.map((turn) => read({ kind: 'divide', line: line(turn) })),
        left,
        top,
        density,
      };
      gl.disable(gl.SCISSOR_TEST);
      return all;
    },
    { side, mixes, turns },
  );
}

export const codes = (text: string) => Buffer.from(text, 'base64');

/** Largest difference of the colour channels from what a formula gives for both layers. */
function worst(
  reading: Reading,
  shown: string,
  formula: (first: number, second: number, pixel: number) => number,
): number {
  const [first, second, seen] = [codes(reading.first), codes(reading.second), codes(shown)];
  let most = 0;
  for (let i = 0; i < seen.length; i++) {
    if (i % 4 === 3 || first[i | 3] < 255 || second[i | 3] < 255) continue;
    most = Math.max(most, Math.abs(seen[i] - Math.round(formula(first[i], second[i], i >> 2))));
  }
  return most;
}

/** Largest error of Tilt over all mixes, counts. */
export function worstTilt(reading: Reading): number {
  return Math.max(
    ...mixes.map(([a, b], n) => worst(reading, reading.tilted[n], (p, q) => tiltCode(p, q, a, b))),
  );
}

/** Largest error of Slide over all lines, counts. */
export function worstSlide(reading: Reading): number {
  return Math.max(
    ...turns.map((turn, n) => {
      const t = (turn * Math.PI) / 180;
      return worst(reading, reading.divided[n], (p, q, pixel) => {
        const x = (pixel % side) + 0.5 - side / 2;
        const y = Math.floor(pixel / side) + 0.5 - side / 2;
        return divideCode(p, q, Math.cos(t) * x + Math.sin(t) * y);
      });
    }),
  );
}
