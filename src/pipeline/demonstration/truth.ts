/** What is true of rendered captures, written for whoever checks what a program found out. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Homography, lightDirection } from '../../imaging/conventions.ts';
import { type Plate } from '../../imaging/render/plate.ts';
import { radianceOf } from '../../imaging/render/radiance.ts';
import { surfaceNormals } from '../../imaging/render/surface-normals.ts';
import { betweenViews, type View } from '../../imaging/render/view.ts';
import { writeFloatTiff } from '../../raster/write-float-tiff.ts';
import { writePicture } from '../../raster/write-picture.ts';
import { type Frame, type Shoot } from './shots.ts';

export interface CaptureTruth {
  readonly file: string;
  /** Takes a pixel of the capture to the plate's base capture. */
  readonly homography: Homography;
  readonly pixelsPerMillimetre: number;
  /** Signal for a luminance of 1; a signal of 1 is the clip level. */
  readonly gain: number;
  /** Unit vectors towards the lamps from the plate's centre, as in `conventions.ts`. */
  readonly lamps: readonly (readonly [number, number, number])[];
  /** From the plate's centre to each lamp, mm. */
  readonly lampDistances: readonly number[];
  readonly plate: { readonly width: number; readonly height: number; readonly density: number };
  /**
   * 32-bit float TIFF, linear sRGB: luminance at the sensor before exposure, without noise.
   * Frames under one light share it.
   */
  readonly radiance: string;
  /** PNG, 255 where that luminance times the gain reaches the clip level in any channel. */
  readonly clipped: string;
  /** 32-bit float TIFF in the base frame: x right, y up, z towards the camera. */
  readonly normals: string;
}

/** Name of the plate's normals beside the truth of its captures. */
const normalsFile = 'normals.tif';

/** Write the truth about all frames of a shoot into a folder. */
export async function writeTruth(folder: string, plate: Plate, shoot: Shoot): Promise<void> {
  const { standing, frames } = shoot;
  const { width, height } = standing.view;
  await mkdir(folder, { recursive: true });
  for (const lighting of new Set(frames.map((frame) => frame.take.lighting))) {
    const under = frames.filter((frame) => frame.take.lighting === lighting);
    const data = radianceOf(plate, standing, lighting);
    const radiance = `${under[0].file}.radiance.tif`;
    await writeFloatTiff(join(folder, radiance), { width, height, channels: 3, data });
    for (const frame of under) {
      const clipped = `${frame.file}.clipped.png`;
      await writePicture(join(folder, clipped), {
        width,
        height,
        channels: 1,
        depth: 8,
        data: clippedMask(data, frame.take.sensor.gain),
        profile: 'srgb',
        format: 'png',
      });
      const told = truthOf(plate, shoot, frame, { radiance, clipped });
      await writeFile(join(folder, `${frame.file}.json`), `${JSON.stringify(told, null, 1)}\n`);
    }
  }
}

/** Write the normals of a plate's surface as its base sees them. */
export async function writeNormals(folder: string, plate: Plate, base: View): Promise<void> {
  const { width, height } = base;
  await mkdir(folder, { recursive: true });
  const data = surfaceNormals(plate, base);
  await writeFloatTiff(join(folder, normalsFile), { width, height, channels: 3, data });
}

function truthOf(
  plate: Plate,
  { standing, base }: Shoot,
  { file, take }: Frame,
  files: Pick<CaptureTruth, 'radiance' | 'clipped'>,
): CaptureTruth {
  const { lamps } = take.lighting;
  return {
    file,
    homography: betweenViews(standing.view, base),
    pixelsPerMillimetre: standing.view.pixelsPerMillimetre,
    gain: take.sensor.gain,
    lamps: lamps.map((lamp) => lightDirection(lamp.bearing, lamp.height)),
    lampDistances: lamps.map((lamp) => lamp.distance),
    plate: { width: plate.width, height: plate.height, density: plate.density },
    ...files,
    normals: normalsFile,
  };
}

function clippedMask(radiance: Float32Array, gain: number): Uint8Array {
  const mask = new Uint8Array(radiance.length / 3);
  for (let i = 0; i < mask.length; i += 1) {
    const most = Math.max(radiance[3 * i], radiance[3 * i + 1], radiance[3 * i + 2]);
    mask[i] = most * gain >= 1 ? 255 : 0;
  }
  return mask;
}
