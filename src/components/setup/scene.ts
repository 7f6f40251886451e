/**
 * A set-up as things with places, for drawing: from the record or from the planner alike.
 * Millimetres and degrees as in `src/imaging/conventions.ts`; null is not recorded.
 */
import type { LampRecord, SetupRecord, SittingRecord } from '../../records/sitting.ts';

export interface SceneLamp {
  readonly bearing: number;
  readonly height: number;
  readonly distance: number | null;
  /** Width of the lit face or of the diffuser before it. */
  readonly size: number | null;
  readonly diffuser: boolean;
}

export interface SetupScene {
  /** Width and height as the camera sees it. */
  readonly plate: readonly [number, number];
  /** False where only the plate's shape is known: drawn 100 mm along its longer side. */
  readonly plateKnown: boolean;
  readonly cameraDistance: number | null;
  /** Diameter of the lens's opening. */
  readonly opening: number | null;
  readonly lamps: readonly SceneLamp[];
  /** Lamps whose bearing or height is not recorded. */
  readonly lampsWithoutPlace: number;
  readonly glass: { readonly angle: number | null; readonly thickness: number | null } | null;
  /** What the glass throws on the plate. */
  readonly panel: {
    readonly bearing: number | null;
    /** Along the path of light. */
    readonly distance: number | null;
    readonly size: number | null;
  } | null;
  /** A plan and not a record: what it leaves open is free. */
  readonly planned?: boolean;
  /** Light behind the plate. */
  readonly behind: boolean;
  readonly surround: NonNullable<SetupRecord['surround']> | null;
}

/** The plate in millimetres, where the pixels of its frame and their scale say it. */
export interface KnownPlate {
  readonly millimetres: readonly [number, number] | null;
  readonly aspect: number;
}

export function sceneOfRecord(
  setup: SetupRecord,
  camera: SittingRecord['camera'],
  plate: KnownPlate,
  moving: readonly { readonly bearing?: number; readonly height?: number }[] = [],
): SetupScene {
  const axial = setup.glass !== undefined || setup.kind === 'axial';
  const placed =
    moving.length > 0 ? moving.map((place) => ({ ...setup.lamps[0], ...place })) : setup.lamps;
  const lamps = axial || setup.kind === 'transmitted' ? [] : placed.flatMap(lampOf);
  const [source] = setup.lamps;
  const { millimetres, aspect } = plate;
  const { focalLength, aperture } = camera;
  return {
    plate: millimetres ?? (aspect > 1 ? [100, 100 / aspect] : [100 * aspect, 100]),
    plateKnown: millimetres !== null,
    cameraDistance: camera.distance ?? null,
    opening: focalLength && aperture ? focalLength / aperture : null,
    lamps,
    lampsWithoutPlace: axial || setup.kind === 'transmitted' ? 0 : placed.length - lamps.length,
    glass: axial
      ? { angle: setup.glass?.angle ?? null, thickness: setup.glass?.thickness ?? null }
      : null,
    panel: axial
      ? {
          bearing: source?.bearing ?? null,
          distance: source?.distance ?? null,
          size: widthOf(source),
        }
      : null,
    behind: setup.kind === 'transmitted',
    surround: setup.surround ?? null,
  };
}

function lampOf(lamp: LampRecord): SceneLamp[] {
  const { bearing, height, distance, diffuser } = lamp;
  if (bearing === undefined || height === undefined) return [];
  return [
    {
      bearing,
      height,
      distance: distance ?? null,
      size: widthOf(lamp),
      diffuser: diffuser !== undefined && diffuser !== false,
    },
  ];
}

function widthOf(lamp: LampRecord | undefined): number | null {
  return typeof lamp?.diffuser === 'number' ? lamp.diffuser : (lamp?.size ?? null);
}

/** Distances for what is not recorded: far enough to be seen, and drawn as unknown. */
export function drawnPlaces(scene: SetupScene) {
  const diagonal = Math.hypot(...scene.plate);
  const camera = scene.cameraDistance ?? 6 * diagonal;
  return {
    camera,
    lamp: (lamp: SceneLamp) => lamp.distance ?? Math.min(4 * diagonal, 0.8 * camera),
    panel: scene.panel?.distance ?? 3 * diagonal,
    /** Height of the glass over the plate: no sitting says it. Half of the panel's way. */
    glass: Math.min(0.45 * (scene.panel?.distance ?? 3 * diagonal), 0.6 * camera),
  };
}
