/**
 * Reading the viewer's canvas and its layers of data planes back, so that Lamp, the renderings of
 * the surface and Range can each be compared with their CPU twins.
 */
import type { Page } from 'playwright-core';
import type { Look } from '../../src/viewer/look.ts';
import { type OpenStage } from './viewer-page.ts';

export const side = 96;

/** What was read at one zoom: the codes of each layer, and the screen under each look. */
export interface PlanesReading {
  readonly layers: readonly Buffer[];
  readonly screens: readonly Buffer[];
}

/** Read the middle of the first layers and of the screen under each look, in one task. */
export async function readPlanes(
  page: Page,
  layers: number,
  looks: readonly Look[],
): Promise<PlanesReading> {
  const read = await page.evaluate(
    ({ side, layers, looks }) => {
      const { drawer } = document.querySelector<OpenStage>('plate-stage')!.surfaces.first!.viewer;
      const left = Math.floor((drawer.canvas.width - side) / 2);
      const top = Math.floor((drawer.canvas.height - side) / 2);
      const text = (bytes: Uint8Array) =>
        btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
      const before = drawer.look;
      // Software drawing is slow: only what is read is drawn. No pixel looks at its neighbours.
      const gl = drawer.canvas.getContext('webgl2')!;
      gl.enable(gl.SCISSOR_TEST);
      gl.scissor(left, drawer.canvas.height - top - side, side, side);
      const screens = looks.map((look) => {
        drawer.look = look;
        return text(drawer.read(left, top, side, side));
      });
      gl.disable(gl.SCISSOR_TEST);
      drawer.look = before;
      return {
        screens,
        layers: Array.from({ length: layers }, (_, n) =>
          text(drawer.readLayer(n, left, top, side, side)),
        ),
      };
    },
    { side, layers, looks: looks as Look[] },
  );
  const bytes = (text: string) => Buffer.from(text, 'base64');
  return { layers: read.layers.map(bytes), screens: read.screens.map(bytes) };
}

/** Codes of the planes at a pixel: four to a layer. */
export function planesAt(layers: readonly Buffer[], planes: number, pixel: number): number[] {
  return Array.from({ length: planes }, (_, k) => layers[k >> 2][4 * pixel + (k & 3)]);
}

/** Largest difference of the screen from what a twin gives; only pixels that are covered. */
export function worstOf(
  screen: Buffer,
  covered: (pixel: number) => boolean,
  twin: (pixel: number) => readonly number[],
): { readonly most: number; readonly pixels: number } {
  let most = 0;
  let pixels = 0;
  for (let pixel = 0; pixel < screen.length / 4; pixel++) {
    if (!covered(pixel)) continue;
    pixels++;
    twin(pixel).forEach((value, c) => {
      most = Math.max(most, Math.abs(screen[4 * pixel + c] - Math.round(value)));
    });
  }
  return { most, pixels };
}
