/** What the stage may ask of a deep zoom surface, without knowing which library draws it. */
import type { Look } from './look.ts';
import type { Placing } from './placing.ts';
import type { Region } from './view-state.ts';

/** One view to lay on a surface. */
export interface SurfaceView {
  readonly id: string;
  /** Address of the folder that holds info.json. */
  readonly service: string;
  readonly width: number;
  readonly height: number;
}

export interface SurfaceEvents {
  /** What is in sight has changed, on every frame of a movement. */
  moved(): void;
  /** A movement has ended. */
  rested(): void;
  /** A drag across the picture, CSS pixels; return true to keep the picture where it is. */
  dragged(dx: number, dy: number): boolean;
  /** A short press on the picture, CSS pixels; return true when it was used. */
  pressed(x: number, y: number): boolean;
  /** A key while the picture has the focus; return true when it was used. */
  key(event: KeyboardEvent): boolean;
  /** The picture cannot be drawn by shader (any longer). */
  plain(): void;
}

export interface Surface {
  /** Whether the layers are combined in linear light by shader. */
  readonly physical: boolean;
  readonly element: HTMLElement;
  /** Lay these views on each other, the first one lowest. Rejects with a sentence. */
  show(views: readonly SurfaceView[]): Promise<void>;
  look(look: Look): void;
  /** What is in sight, pixels of the first view's frame. */
  region(): Region;
  placing(): Placing;
  /** Bring a region into sight; null is the whole picture. */
  fit(region: Region | null, atOnce: boolean): void;
  zoom(factor: number): void;
  pan(dx: number, dy: number): void;
  mirror(on: boolean): void;
  /** Take over exactly what another surface shows. */
  follow(other: Surface): void;
  close(): void;
}
