/** How the layers of a surface are combined in the last pass. */
import type { Line } from './divider-line.ts';

export type Look =
  | { readonly kind: 'single' }
  /** The line is in CSS pixels of the surface's box. */
  | { readonly kind: 'divide'; readonly line: Line }
  | { readonly kind: 'tilt'; readonly a: number; readonly b: number };

/** How many layers a look reads. */
export function layersOf(look: Look): 1 | 2 {
  return look.kind === 'single' ? 1 : 2;
}
