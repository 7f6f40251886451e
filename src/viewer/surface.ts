/** What the stage may ask of a deep zoom surface, without knowing which library draws it. */
import type { Look } from './look.ts';
import type { Placing } from './placing.ts';
import type { Region } from './view-state.ts';

/** Tiles of data planes over a view: what of `layer.json` the drawing needs. */
export interface PlaneTiles {
  /** Address of the folder that holds layer.json. */
  readonly folder: string;
  readonly width: number;
  readonly height: number;
  readonly tile: number;
  readonly planes: number;
  readonly levels: number;
  readonly format: 'webp' | 'png';
}

/** One view to lay on a surface, or data planes over it. */
export interface SurfaceView {
  readonly id: string;
  /** Address of the folder that holds info.json. */
  readonly service: string;
  readonly width: number;
  readonly height: number;
  /** Data planes instead of a picture. */
  readonly data?: PlaneTiles;
  /** Address of one whole picture without tiles. */
  readonly picture?: string;
}

/** How two surfaces that move together correspond; both in pixels of their own frames. */
export interface Link {
  /** Pixels of the follower for one pixel of the leader: the ratio of their scales. */
  readonly ratio: number;
  /** The places that lie under one another, x and y. */
  readonly mine: readonly [number, number];
  readonly theirs: readonly [number, number];
}

export interface SurfaceEvents {
  /** What is in sight has changed, on every frame of a movement. */
  moved(): void;
  /** The picture's box has another size. */
  resized(): void;
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
  /** Lay these views on each other, the first one lowest, combined so. Rejects with a sentence. */
  show(views: readonly SurfaceView[], look: Look): Promise<void>;
  /** Whether everything that is in sight has come. */
  readonly complete: boolean;
  look(look: Look): void;
  /** Codes of the first layers as they are on the screen, RGBA; null without shaders. */
  layerCodes(count: number): Uint8Array[] | null;
  /** What is in sight, pixels of the first view's frame. */
  region(): Region;
  placing(): Placing;
  /** Bring a region into sight; null is the whole picture. */
  fit(region: Region | null, atOnce: boolean): void;
  zoom(factor: number): void;
  pan(dx: number, dy: number): void;
  mirror(on: boolean): void;
  /** Take over exactly what another surface shows, or what corresponds to it. */
  follow(other: Surface, link?: Link): void;
  close(): void;
}
