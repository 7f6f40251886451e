/**
 * JPEG files from painted pictures, a few at a time on libuv's threads.
 *
 * Quality 85 with halved colour resolution and optimised Huffman tables, and the plain encoder:
 * the one that searches harder (mozjpeg) was measured to smooth the grain of a plate away, 77 to
 * 87 % of its fine energy kept against 97 to 100 %.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { sharp } from './libvips.ts';
import type { PictureSink } from './picture-sink.ts';

export interface JpegOptions {
  readonly channels: 1 | 3;
  readonly quality: number;
  /** XMP packet for whole pictures (`full/...`); tiles carry none. */
  readonly packet?: string | undefined;
}

/** Pictures being encoded at once: enough to keep the threads busy, few enough to hold. */
const inFlight = 16;

export function jpegSink(folder: string, options: JpegOptions): PictureSink {
  const { channels, quality, packet } = options;
  const free = new Map<number, Uint8Array[]>();
  const flying = new Set<Promise<void>>();

  async function encode(
    address: string,
    data: Uint8Array,
    width: number,
    height: number,
  ): Promise<void> {
    const target = join(folder, address);
    mkdirSync(target, { recursive: true });
    const pixels = data.subarray(0, width * height * channels);
    const picture = sharp(pixels, { raw: { width, height, channels } });
    if (channels === 1) picture.toColourspace('b-w');
    if (packet !== undefined && address.startsWith('full/')) picture.withXmp(packet);
    await picture
      .jpeg({ quality, chromaSubsampling: '4:2:0', optimiseCoding: true, mozjpeg: false })
      .toFile(join(target, 'default.jpg'));
    const list = free.get(data.length) ?? [];
    list.push(data);
    free.set(data.length, list);
  }

  return {
    room: (bytes) => free.get(bytes)?.pop() ?? new Uint8Array(bytes),
    take(address, data, width, height) {
      const job: Promise<void> = encode(address, data, width, height).finally(() =>
        flying.delete(job),
      );
      job.catch(() => undefined); // reported by ready() or finish()
      flying.add(job);
    },
    get full() {
      return flying.size > inFlight;
    },
    async ready() {
      while (flying.size > inFlight) await Promise.race(flying);
    },
    async finish() {
      await Promise.all(flying);
    },
  };
}
