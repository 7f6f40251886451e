/** Keeps the painted bytes of a pyramid, before any encoder has touched them. */
import { type PictureSink } from '../../src/raster/picture-sink.ts';

export interface Painted {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

export function memorySink(): PictureSink & { readonly pictures: Map<string, Painted> } {
  const pictures = new Map<string, Painted>();
  return {
    pictures,
    full: false,
    room: (bytes) => new Uint8Array(bytes),
    take: (address, data, width, height) => pictures.set(address, { data, width, height }),
    ready: () => Promise.resolve(),
    finish: () => Promise.resolve(),
  };
}
