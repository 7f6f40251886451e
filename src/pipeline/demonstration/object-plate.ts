/** From a demonstration object to the renderer's plate: its picture drawn, its wear laid on. */
import type { Picture, Plate } from '../../imaging/render/plate.ts';
import { seedOf } from '../../imaging/render/seeded.ts';
import { randomDust, randomScratches } from '../../imaging/render/strokes.ts';
import { renderScene, renderScenePart } from '../../imaging/scenes/index.ts';
import type { DemonstrationObject } from './objects.ts';

/** Longer side of a drawn picture, pixels; grain finer than this is the plate's own. */
const sceneSide = 1500;

export function objectPlate(object: DemonstrationObject, sceneScale = 1): Plate {
  const [width, height] = object.size;
  const { seed, wear, stereo, opening } = object;
  const places = stereo ? [-stereo.apart / 2, stereo.apart / 2] : [0];
  return {
    seed,
    support: object.support ?? 'silver',
    width,
    height,
    pictures: pictures(object, sceneScale),
    laterallyReversed: object.laterallyReversed ?? true,
    density: 0.78,
    polish: 0.05,
    undulation: 0.1,
    tarnish: { ...object.tarnish, openings: places.map((x) => ({ ...opening, x, y: 0 })) },
    scratches: [
      ...randomScratches(seedOf('scratches', seed), wear.scratches, width, height),
      ...(object.marks ?? []),
    ],
    dust: randomDust(seedOf('dust', seed), wear.specks, wear.fibres, width, height),
    dents: object.dents ?? [],
    filmSpots: object.filmSpots ?? [],
    tints: (object.colouring ?? []).map(({ part, colour, strength }) => ({
      mask: renderScenePart(object.scene, part, pictureOptions(object, sceneScale)),
      colour,
      strength,
    })),
  };
}

/** The plate as it was in a capture of this name: later marks are only in later captures. */
export function plateAt(plate: Plate, { laterMarks }: DemonstrationObject, name: string): Plate {
  if (!laterMarks || !name.includes(laterMarks.year)) return plate;
  return { ...plate, scratches: [...plate.scratches, ...laterMarks.strokes] };
}

/** Size of one drawn picture, pixels. */
function pictureOptions({ size, seed, stereo }: DemonstrationObject, sceneScale: number) {
  const [width, height] = stereo ? [stereo.width, stereo.height] : size;
  const perMillimetre = (sceneScale * sceneSide) / Math.max(...size);
  return {
    width: Math.round(width * perMillimetre),
    height: Math.round(height * perMillimetre),
    seed,
  };
}

function pictures(object: DemonstrationObject, sceneScale: number): Picture[] {
  const { scene, stereo } = object;
  const [width, height] = stereo ? [stereo.width, stereo.height] : object.size;
  const options = pictureOptions(object, sceneScale);
  if (!stereo) {
    const drawn = renderScene(scene, options);
    return [{ scene: drawn, left: -width / 2, top: -height / 2, width, height }];
  }
  return (['left', 'right'] as const).map((eye, k) => ({
    scene: renderScene(scene, { ...options, eye }),
    left: (k - 0.5) * stereo.apart - width / 2,
    top: -height / 2,
    width,
    height,
  }));
}
