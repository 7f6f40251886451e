/**
 * A data type of our own in the deep zoom library: a tile decoded off the main thread, without
 * colour management and without premultiplying, so that the codes of the file reach the shader.
 * Its own bitmap type premultiplies.
 */
import OpenSeadragon from 'openseadragon';

type Convert = (tile: unknown, data: never) => unknown;
interface Converter {
  learn(from: string, to: string, convert: Convert, costPower: number, cost: number): void;
  learnDestroy(type: string, free: (data: never) => void): void;
}

const asTheFileSays: ImageBitmapOptions = {
  premultiplyAlpha: 'none',
  colorSpaceConversion: 'none',
};

/** For the plain drawer, should it have to take over. */
function onCanvas(bitmap: ImageBitmap): CanvasRenderingContext2D | null {
  const canvas = document.createElement('canvas');
  canvas.width = bitmap.width;
  canvas.height = bitmap.height;
  const context = canvas.getContext('2d');
  context?.drawImage(bitmap, 0, 0);
  return context;
}

let learnt = false;

/** Teach the library the type; once for a page. */
export function learnPlainBitmap(): void {
  if (learnt) return;
  learnt = true;
  const converter = (OpenSeadragon as unknown as { converter: Converter }).converter;
  const decode = (_: unknown, blob: Blob) => createImageBitmap(blob, asTheFileSays);
  const copy = (_: unknown, bitmap: ImageBitmap) => createImageBitmap(bitmap, asTheFileSays);
  const draw = (_: unknown, bitmap: ImageBitmap) => onCanvas(bitmap);
  converter.learn('rasterBlob', 'plainBitmap', decode, 1, 1);
  converter.learn('plainBitmap', 'plainBitmap', copy, 1, 1);
  converter.learn('plainBitmap', 'context2d', draw, 1, 2);
  converter.learnDestroy('plainBitmap', (bitmap: ImageBitmap) => bitmap.close());
}
