/**
 * Photographs that nobody here made, as pictures for pairs: from the Debian packages
 * `python3-skimage` and `opencv-doc`, and from the check material beside the project.
 */
import { existsSync } from 'node:fs';
import sharp from 'sharp';
import type { Plane, Plane16 } from '../../../src/imaging/plane.ts';

/** Folder of scikit-image's sample photographs as Debian installs it. */
export const skimageFolder = '/usr/lib/python3/dist-packages/skimage/data';
/** Folder of OpenCV's samples as Debian installs it. */
export const opencvFolder = '/usr/share/doc/opencv-doc/examples/data';

export function isThere(path: string): boolean {
  return existsSync(path);
}

/** Grey codes divided by 255, enlarged or shrunk to a width; not linear, which no pair minds. */
export async function loadPicture(path: string, width: number): Promise<Plane> {
  const { data, info } = await sharp(path)
    .rotate()
    .flatten({ background: 'white' })
    .resize({ width, kernel: 'cubic' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const plane = new Float32Array(info.width * info.height);
  for (let i = 0; i < plane.length; i += 1) plane[i] = data[i * info.channels] / 255;
  return { width: info.width, height: info.height, data: plane };
}

/** Linear luminance of a file, sRGB decoding approximated by an exponent of 2.2. */
export async function loadCapture(path: string): Promise<Plane16> {
  const { data, info } = await sharp(path).greyscale().raw().toBuffer({ resolveWithObject: true });
  const plane = new Uint16Array(info.width * info.height);
  for (let i = 0; i < plane.length; i += 1) {
    plane[i] = Math.round(65535 * (data[i * info.channels] / 255) ** 2.2);
  }
  return { width: info.width, height: info.height, data: plane };
}
