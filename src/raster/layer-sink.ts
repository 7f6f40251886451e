/** Grey pictures of data planes as WebP or PNG files, a few at a time on libuv's threads. */
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { sharp } from './libvips.ts';

export interface LayerCoding {
  readonly format: 'webp' | 'png';
  /** Of a WebP: 1 to 100, or without loss (the default). */
  readonly quality?: number | 'lossless' | undefined;
  /** How hard the WebP coder looks for a smaller file, 0 to 6; the default of 2 is quick. */
  readonly effort?: number | undefined;
}

export interface LayerSink {
  /** Room for exactly `bytes` bytes. */
  room(bytes: number): Uint8Array;
  /** Take one picture; `data` now belongs to the sink. @param name Without its ending. */
  take(name: string, data: Uint8Array, width: number, height: number): void;
  /** Whether `ready` has to be waited for. */
  readonly full: boolean;
  /** Resolves when there is room for more; rejects when a picture could not be written. */
  ready(): Promise<void>;
  /** Resolves when everything taken has been written. */
  finish(): Promise<void>;
}

/** Pictures being encoded at once: enough to keep the threads busy, few enough to hold. */
const inFlight = 16;

export function layerSink(folder: string, coding: LayerCoding): LayerSink {
  const { format, quality = 'lossless', effort = 2 } = coding;
  const free = new Map<number, Uint8Array[]>();
  const flying = new Set<Promise<void>>();

  async function encode(
    name: string,
    data: Uint8Array,
    width: number,
    height: number,
  ): Promise<void> {
    const target = join(folder, `${name}.${format}`);
    mkdirSync(dirname(target), { recursive: true });
    const picture = sharp(data, { raw: { width, height, channels: 1 } }).toColourspace('b-w');
    if (format === 'png') picture.png({ compressionLevel: 9, adaptiveFiltering: true });
    else if (quality === 'lossless') picture.webp({ lossless: true, effort });
    else picture.webp({ quality, effort });
    await picture.toFile(target);
    const list = free.get(data.length) ?? [];
    list.push(data);
    free.set(data.length, list);
  }

  return {
    room: (bytes) => free.get(bytes)?.pop() ?? new Uint8Array(bytes),
    take(name, data, width, height) {
      const job: Promise<void> = encode(name, data, width, height).finally(() =>
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
