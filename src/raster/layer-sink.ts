/** Grey pictures of data planes as WebP or PNG files, a few at a time on libuv's threads. */
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { encoderQueue } from './encoder-queue.ts';
import { sharp } from './libvips.ts';
import type { PictureSink } from './picture-sink.ts';

export interface LayerCoding {
  readonly format: 'webp' | 'png';
  /** Of a WebP: 1 to 100, or without loss (the default). */
  readonly quality?: number | 'lossless' | undefined;
  /** How hard the WebP coder looks for a smaller file, 0 to 6; the default of 2 is quick. */
  readonly effort?: number | undefined;
}

/** A sink whose pictures are named without their ending. */
export function layerSink(folder: string, coding: LayerCoding): PictureSink {
  const { format, quality = 'lossless', effort = 2 } = coding;
  return encoderQueue((name, data, width, height) => {
    const target = join(folder, `${name}.${format}`);
    mkdirSync(dirname(target), { recursive: true });
    const picture = sharp(data, { raw: { width, height, channels: 1 } }).toColourspace('b-w');
    if (format === 'png') picture.png({ compressionLevel: 9, adaptiveFiltering: true });
    else if (quality === 'lossless') picture.webp({ lossless: true, effort });
    else picture.webp({ quality, effort });
    return picture.toFile(target);
  });
}
