/** A thread that traces scenes and photographs plates. */
import { join } from 'node:path';
import { photograph } from '../../imaging/render/photograph.ts';
import { writePicture } from '../../raster/write-picture.ts';
import { makePlate } from './make-plate.ts';
import { type DemonstrationObject } from './object.ts';
import { readScene, type SceneOrder, traceScene } from './scene-store.ts';
import { type View } from '../../imaging/render/view.ts';
import { type Shoot } from './shots.ts';
import { writeNormals, writeTruth } from './truth.ts';

/** A kept scene of an object. */
export interface KeptScene {
  readonly folder: string;
  readonly width: number;
  readonly height: number;
}

export type RenderJob =
  | { readonly kind: 'scene'; readonly order: SceneOrder; readonly folder: string }
  | {
      /** The shape of the plate, for those who asked for the truth. */
      readonly kind: 'normals';
      readonly object: DemonstrationObject;
      readonly scenes: readonly KeptScene[];
      readonly base: View;
      readonly truth: string;
    }
  | {
      readonly kind: 'shoot';
      readonly object: DemonstrationObject;
      /** In the order of the object's pictures and coloured parts. */
      readonly scenes: readonly KeptScene[];
      readonly shoot: Shoot;
      /** Where the files go. */
      readonly folder: string;
      /** Where the truth about them goes, if it is wanted. */
      readonly truth: string | null;
    };

/** JPEG quality of the captures: fine grain and hairline scratches must survive. */
const quality = 93;

export default async function render(job: RenderJob): Promise<void> {
  if (job.kind === 'scene') {
    traceScene(job.order, job.folder);
    return;
  }
  const { object, truth } = job;
  const scenes = await Promise.all(
    job.scenes.map((scene) => readScene(scene.folder, scene.width, scene.height)),
  );
  if (job.kind === 'normals') {
    await writeNormals(job.truth, makePlate(object, scenes, undefined), job.base);
    return;
  }
  const { shoot, folder } = job;
  const plate = makePlate(object, scenes, shoot.day);
  const pictures = photograph(
    plate,
    shoot.standing,
    shoot.frames.map((frame) => frame.take),
  );
  const { width, height } = shoot.standing.view;
  for (const [i, frame] of shoot.frames.entries()) {
    const deep = frame.take.sensor.depth === 16;
    await writePicture(join(folder, frame.file), {
      width,
      height,
      channels: 3,
      depth: frame.take.sensor.depth,
      data: pictures[i],
      profile: 'srgb',
      exif: frame.exif,
      format: deep ? 'tiff' : 'jpeg',
      quality,
    });
  }
  if (truth !== null) await writeTruth(truth, plate, shoot);
}
