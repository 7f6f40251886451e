/**
 * Pictures next to one another on a plain ground, for previews of a page elsewhere. From
 * finished pictures of the exhibit, so nothing of a capture's metadata can come along.
 */
import { sharp } from './libvips.ts';

export interface SideBySide {
  /** Whole pictures on the disk, from the left; one or two. */
  readonly pictures: readonly string[];
  /** Of the result, pixels. */
  readonly width: number;
  readonly height: number;
  /** Around and between the pictures, pixels. */
  readonly margin: number;
  /** Ground, `#rrggbb`. */
  readonly ground: string;
  /** XMP packet that is written into the file. */
  readonly packet: string;
}

/** JPEG quality: a preview is a picture of a few hundred kilobytes at most. */
const quality = 82;

/** The JPEG file; every picture whole, as large as its share of the ground allows. */
export async function sideBySide(options: SideBySide): Promise<Buffer> {
  const { pictures, width, height, margin, ground, packet } = options;
  const cell = {
    width: Math.floor((width - margin * (pictures.length + 1)) / pictures.length),
    height: height - 2 * margin,
  };
  const shrunk = await Promise.all(
    pictures.map((path) =>
      sharp(path)
        .resize({ ...cell, fit: 'inside', withoutEnlargement: true })
        .toColourspace('srgb')
        .png()
        .toBuffer({ resolveWithObject: true }),
    ),
  );
  const total =
    shrunk.reduce((sum, { info }) => sum + info.width, 0) + margin * (shrunk.length - 1);
  let left = Math.floor((width - total) / 2);
  const layers = shrunk.map(({ data, info }) => {
    const place = { input: data, left, top: Math.floor((height - info.height) / 2) };
    left += info.width + margin;
    return place;
  });
  return sharp({ create: { width, height, channels: 3, background: ground } })
    .composite(layers)
    .withXmp(packet)
    .jpeg({ quality, mozjpeg: false })
    .toBuffer();
}
