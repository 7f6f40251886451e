/** Rows of a float TIFF that `tiff-strips.ts` wrote: its strips follow one another from the first. */
import { openBytes } from './byte-reader.ts';
import { numbersOf, readDirectories } from './tiff-directory.ts';

export interface FloatRows {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  /** Rows in order, some at a time; the array is used again. */
  batches(rows: number): AsyncGenerator<{ data: Float32Array; rows: number; y: number }>;
  close(): Promise<void>;
}

/** @throws RangeError if the file is not one of ours. */
export async function openFloatRows(path: string): Promise<FloatRows> {
  const file = await openBytes(path);
  const directory = (await readDirectories(file))?.[0];
  const one = (tag: number): number => (directory ? (numbersOf(directory, tag)[0] ?? 0) : 0);
  const [width, height, channels, from] = [one(256), one(257), one(277), one(273)];
  if (one(339) !== 3 || one(258) !== 32 || one(259) !== 1) {
    await file.close();
    throw new RangeError(`${path} holds no plain 32-bit floats.`);
  }
  const line = width * channels * 4;
  return {
    width,
    height,
    channels,
    async *batches(most) {
      const buffer = Buffer.from(new ArrayBuffer(most * line));
      for (let y = 0; y < height; y += most) {
        const rows = Math.min(most, height - y);
        await file.fill(buffer, rows * line, from + y * line);
        yield { data: new Float32Array(buffer.buffer, 0, rows * width * channels), rows, y };
      }
    },
    close: () => file.close(),
  };
}
