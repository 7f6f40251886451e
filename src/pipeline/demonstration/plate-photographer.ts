/** One demonstration plate photographed: every file of its sittings, in a thread of its own. */
import { join } from 'node:path';
import { mkdir, rename, rm } from 'node:fs/promises';
import { photograph, type Lighting, type Take } from '../../imaging/render/photograph.ts';
import type { Plate } from '../../imaging/render/plate.ts';
import { seedOf } from '../../imaging/render/seeded.ts';
import { technicalCamera } from '../../imaging/render/sensor.ts';
import { writePicture } from '../../raster/write-picture.ts';
import type { SittingRecord } from '../../records/sitting.ts';
import { exposuresOf, type Exposure } from './exposures.ts';
import { lightingOf } from './lighting-of.ts';
import { meteredGain, meteringLight } from './metering.ts';
import { objectPlate, plateAt } from './object-plate.ts';
import { demonstrationObjects, type DemonstrationObject } from './objects.ts';

export interface PhotographJob {
  readonly slug: string;
  readonly sittings: readonly SittingRecord[];
  /** Private folder that the files are made in; the caller moves it into place. */
  readonly folder: string;
  /** The plate's `captures/`, replaced when all files are there. */
  readonly captures: string;
}

export default async function photographPlate(job: PhotographJob): Promise<number> {
  const object = demonstrationObjects.find(({ slug }) => slug === job.slug);
  if (!object) throw new Error(`There is no demonstration plate "${job.slug}".`);
  const plate = objectPlate(object);
  await mkdir(job.folder, { recursive: true });
  let count = 0;
  for (const sitting of job.sittings) {
    for (const series of seriesOf(exposuresOf(object, sitting))) {
      await photographSet(
        plateAt(plate, object, series[0].file),
        object,
        series,
        sitting,
        job.folder,
      );
      count += series.length;
    }
  }
  await rm(job.captures, { recursive: true, force: true });
  await rename(job.folder, job.captures);
  return count;
}

/** Files of one set are taken from the same stand, a few at a time so that memory stays small. */
const atOnce = 6;

function seriesOf(exposures: readonly Exposure[]): Exposure[][] {
  const series: Exposure[][] = [];
  for (const exposure of exposures) {
    const last = series.at(-1);
    const same = last?.[0].stand === exposure.stand && last.length < atOnce;
    if (last && same) last.push(exposure);
    else series.push([exposure]);
  }
  return series;
}

async function photographSet(
  plate: Plate,
  object: DemonstrationObject,
  series: readonly Exposure[],
  sitting: SittingRecord,
  folder: string,
): Promise<void> {
  const { view, ball } = series[0];
  const standing = { view, blur: 0.55, fallOff: true, ball: ball ?? undefined };
  const lightings = new Map<string, Lighting>();
  const takes = series.map(({ setup, place, relative, file }): Take => {
    const light = JSON.stringify([setup, place]);
    const lighting = lightings.get(light) ?? lightingOf(setup, view, place);
    lightings.set(light, lighting);
    return {
      lighting,
      sensor: {
        ...technicalCamera,
        gain: meteredGain(plate, view, meteringLight(setup, view)) * relative,
        depth: file.endsWith('.tif') ? 16 : 8,
        seed: seedOf(`${object.slug}/${file}`, object.seed),
      },
    };
  });
  const pictures = photograph(plate, standing, takes);
  for (const [k, exposure] of series.entries()) {
    await writeCapture(join(folder, exposure.file), pictures[k], takes[k], exposure, sitting);
  }
}

async function writeCapture(
  path: string,
  data: Uint8Array | Uint16Array,
  { sensor }: Take,
  { view, seconds }: Exposure,
  { camera, date }: SittingRecord,
): Promise<void> {
  await writePicture(path, {
    width: view.width,
    height: view.height,
    channels: 3,
    depth: sensor.depth,
    data,
    profile: 'srgb',
    format: path.endsWith('.tif') ? 'tiff' : 'jpeg',
    quality: 92,
    exif: {
      make: camera.make ?? null,
      model: camera.model ?? null,
      lens: camera.lens ?? null,
      focalLength: camera.focalLength ?? null,
      aperture: camera.aperture ?? null,
      iso: camera.iso ?? null,
      seconds,
      taken: date ? `${date}T10:00:00` : null,
    },
  });
}
