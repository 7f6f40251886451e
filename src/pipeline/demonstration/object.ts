/**
 * What a demonstration plate is, beyond its record: the picture on it, its surface and its
 * damage, as data that the renderer turns into captures. How it was photographed stands in its
 * `sitting.yaml`, like that of any plate.
 */
import {
  type Dent,
  type FilmSpot,
  type Opening,
  type Support,
} from '../../imaging/render/plate.ts';
import { type Stroke } from '../../imaging/render/strokes.ts';
import { type SceneName } from '../../imaging/scenes/index.ts';

export interface DemonstrationObject {
  readonly slug: string;
  readonly seed: number;
  readonly scene: SceneName;
  /** True for one plate with two pictures side by side. */
  readonly stereo?: boolean;
  readonly support?: Support;
  /** Elements along the longer side of the traced picture; 1150 where nothing is said. */
  readonly sceneSide?: number;
  /** mm as the camera sees it. */
  readonly width: number;
  readonly height: number;
  readonly laterallyReversed: boolean;
  /** Cloth seen around the plate in every capture, mm. */
  readonly margin: number;
  readonly density: number;
  readonly polish: number;
  readonly undulation: number;
  readonly tarnish: {
    readonly openings: readonly Opening[];
    readonly rim: number;
    readonly reach: number;
    readonly haze: number;
    readonly edge: number;
  };
  /** Random marks: fine scratches, specks of dust, fibres. */
  readonly wear: { readonly scratches: number; readonly specks: number; readonly fibres: number };
  readonly marks?: readonly Mark[];
  readonly dents?: readonly Dent[];
  readonly filmSpots?: readonly FilmSpot[];
  /** Parts of the scene that were coloured by hand. */
  readonly colouring?: readonly {
    readonly part: string;
    readonly colour: readonly [number, number, number];
    readonly strength: number;
  }[];
  /** Signal that the densest highlight gives in each capture, by id; 1 is the clip level. */
  readonly exposures?: Readonly<Record<string, number>>;
}

/** A scratch, or a bundle of them. */
export interface Mark {
  readonly strokes: readonly Stroke[];
  /** Day from which it is there, `YYYY-MM-DD`; always where nothing is said. */
  readonly since?: string;
}
