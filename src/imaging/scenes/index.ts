/**
 * The scenes that the demonstration plates show: our own, drawn by a small ray tracer.
 * `renderScene` gives linear luminance as it was exposed to the plate, 0 to 1.
 */
import { type Plane } from '../plane.ts';
import { harbour, stereoQuay } from './harbour.ts';
import { instrumentDesk } from './instrument-desk.ts';
import { partCoverage } from './part.ts';
import { pictureRows } from './picture.ts';
import { plasterHead } from './plaster-head.ts';
import { type SceneMaker } from './scene.ts';
import { stillLife } from './still-life.ts';
import { street } from './street.ts';
import { toolBench } from './tool-bench.ts';
import { type Eye } from './view.ts';
import { windowRoom } from './window-room.ts';

const makers = {
  'still-life': stillLife,
  'instrument-desk': instrumentDesk,
  'window-room': windowRoom,
  harbour,
  street,
  'plaster-head': plasterHead,
  'stereo-quay': stereoQuay,
  'tool-bench': toolBench,
} as const satisfies Record<string, SceneMaker>;

export type SceneName = keyof typeof makers;
export const sceneNames = Object.keys(makers) as readonly SceneName[];

export interface SceneOptions {
  /** Size of the picture, pixels. */
  readonly width: number;
  readonly height: number;
  /** Changes grain, stains and small placements, not the composition. */
  readonly seed: number;
  /** Standpoint of a stereo pair; the middle where nothing is said. */
  readonly eye?: Eye;
}

/** Rows [firstRow, firstRow + rowCount) of {@link renderScene}, the same numbers. */
export function renderSceneRows(
  name: SceneName,
  options: SceneOptions,
  firstRow: number,
  rowCount: number,
): Float32Array {
  return pictureRows(makers[name](options.seed), options, firstRow, rowCount);
}

/** The whole picture: linear luminance exposed to the plate, 0 to 1, the right way round. */
export function renderScene(name: SceneName, options: SceneOptions): Plane {
  return {
    width: options.width,
    height: options.height,
    data: renderSceneRows(name, options, 0, options.height),
  };
}

/**
 * Where a named part is, for hand colouring: coverage of each pixel, 0 to 1.
 *
 * @throws RangeError for a part that the scene does not name.
 */
export function renderScenePart(name: SceneName, part: string, options: SceneOptions): Plane {
  const scene = makers[name](options.seed);
  const bodies = scene.parts?.[part];
  if (!bodies) {
    const known = Object.keys(scene.parts ?? {}).join(', ') || 'none';
    throw new RangeError(`The scene "${name}" has no part "${part}". It names: ${known}.`);
  }
  return partCoverage(scene, bodies, options);
}
