/**
 * The only door to OpenSeadragon. It is imported on first use, never before: the library is
 * larger than everything else on the page together.
 */
import type { Surface, SurfaceEvents } from './surface.ts';
import { LibrarySurface } from './osd/library-surface.ts';

/**
 * Lay a deep zoom surface into an empty element.
 *
 * @param name What a screen reader calls it.
 */
export function openSurface(element: HTMLElement, name: string, events: SurfaceEvents): Surface {
  return new LibrarySurface(element, name, events);
}
