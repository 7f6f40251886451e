/** From a demonstration object and its traced scenes to the renderer's plate, on a given day. */
import { type Plane } from '../../imaging/plane.ts';
import { type Picture, type Plate } from '../../imaging/render/plate.ts';
import { seedOf } from '../../imaging/render/seeded.ts';
import { randomDust, randomScratches } from '../../imaging/render/strokes.ts';
import { type DemonstrationObject } from './object.ts';
import { type SceneOrder } from './scene-store.ts';

/** Elements along the longer side of a traced scene; the plates' own lenses resolved no more. */
const usualSide = 1150;

/** Each of the two pictures of a stereo plate, and what lies between them, mm. */
const stereoPicture = { width: 48, height: 62, gap: 3 };

/** The scenes that an object needs: one picture, or the two of a stereo pair, then its coloured parts. */
export function sceneOrders(object: DemonstrationObject): SceneOrder[] {
  const frame = object.stereo ? stereoPicture : object;
  const sceneSide = object.sceneSide ?? usualSide;
  const scale =
    (object.stereo ? 0.75 * sceneSide : sceneSide) / Math.max(frame.width, frame.height);
  const size = {
    name: object.scene,
    width: Math.round(frame.width * scale),
    height: Math.round(frame.height * scale),
    seed: object.seed,
  };
  const pictures: SceneOrder[] = object.stereo
    ? [
        { ...size, eye: 'left' },
        { ...size, eye: 'right' },
      ]
    : [size];
  // A brush is no finer than this.
  const brush = {
    ...size,
    width: Math.round(size.width * 0.6),
    height: Math.round(size.height * 0.6),
  };
  return [...pictures, ...(object.colouring ?? []).map(({ part }) => ({ ...brush, part }))];
}

/**
 * The plate as it was on a day.
 *
 * @param scenes Traced scenes, in the order of {@link sceneOrders}.
 */
export function makePlate(
  object: DemonstrationObject,
  scenes: readonly Plane[],
  day: string | undefined,
): Plate {
  const { width, height, seed } = object;
  const pictures = picturesOf(object, scenes);
  const marks = (object.marks ?? []).filter(
    ({ since }) => since === undefined || (day ?? '9999') >= since,
  );
  const { wear } = object;
  return {
    seed,
    support: object.support ?? 'silver',
    width,
    height,
    pictures,
    laterallyReversed: object.laterallyReversed,
    density: object.density,
    polish: object.polish,
    undulation: object.undulation,
    tarnish: object.tarnish,
    scratches: [
      ...randomScratches(seedOf('scratches', seed), wear.scratches, width, height),
      ...marks.flatMap((mark) => mark.strokes),
    ],
    dust: randomDust(seedOf('dust', seed), wear.specks, wear.fibres, width, height),
    dents: object.dents ?? [],
    filmSpots: object.filmSpots ?? [],
    tints: (object.colouring ?? []).map(({ colour, strength }, i) => ({
      mask: scenes[pictures.length + i],
      colour,
      strength,
    })),
  };
}

/** A plate is reversed as a whole: of a stereo pair the left standpoint comes to lie on the right. */
function picturesOf(object: DemonstrationObject, scenes: readonly Plane[]): Picture[] {
  const { width, height } = object;
  if (!object.stereo)
    return [{ scene: scenes[0], left: -width / 2, top: -height / 2, width, height }];
  const { gap, ...size } = stereoPicture;
  const left = object.laterallyReversed ? scenes[1] : scenes[0];
  const right = object.laterallyReversed ? scenes[0] : scenes[1];
  const top = -size.height / 2;
  return [
    { scene: left, left: -size.width - gap / 2, top, ...size },
    { scene: right, left: gap / 2, top, ...size },
  ];
}
