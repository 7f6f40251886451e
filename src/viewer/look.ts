/** How the layers of a surface are combined in the last pass. */
import type { Domain } from '../imaging/relight/light-domain.ts';
import type { Line } from './divider-line.ts';

export type SurfaceRendering = 'relief' | 'slope' | 'gloss';

export type Look =
  | { readonly kind: 'single' }
  /** The line is in CSS pixels of the surface's box. */
  | { readonly kind: 'divide'; readonly line: Line }
  | { readonly kind: 'tilt'; readonly a: number; readonly b: number }
  | { readonly kind: 'difference'; readonly stretch: number }
  /** Codes of the planes times factors, `src/imaging/relight/lamp-light.ts`. */
  | {
      readonly kind: 'lamp';
      readonly planes: number;
      readonly domain: Domain;
      readonly base: ArrayLike<number>;
      /** Row-major, 3 rows of one factor for each plane. */
      readonly factors: ArrayLike<number>;
    }
  /** The surface alone, `src/imaging/surface-picture.ts`. */
  | {
      readonly kind: 'surface';
      readonly rendering: SurfaceRendering;
      readonly light: readonly [number, number, number];
      readonly offset: readonly number[];
      readonly step: readonly number[];
      readonly steepest: number;
    }
  /** The merged light behind a rendering, `src/imaging/wide-range.ts`. */
  | {
      readonly kind: 'range';
      /** Stops that a gain code stands for: `offset + step * code`. */
      readonly offset: number;
      readonly step: number;
      readonly offsetBase: number;
      readonly offsetMerged: number;
      /** Stops of exposure; null shows the rendering as it was made. */
      readonly stops: number | null;
      /** Light, after the exposure, that is shown as white. */
      readonly white: number;
      /** Light at which an exposure clips, after the exposure; null for the merged light. */
      readonly clip: number | null;
      /** Tint where no frame holds the light. */
      readonly marks: boolean;
    };

/** How many screen layers a look reads. */
export function layersOf(look: Look): number {
  switch (look.kind) {
    case 'single':
      return 1;
    case 'lamp':
      return layersForPlanes(look.planes);
    case 'surface':
      return layersForPlanes(4);
    case 'divide':
    case 'tilt':
    case 'difference':
    case 'range':
      return 2;
  }
}

/** Four planes to a layer; one place more is kept for coverage. */
export function layersForPlanes(planes: number): number {
  return Math.ceil((planes + 1) / 4);
}
