/** Several pictures of one size read side by side: the same rows of all of them at a time. */
import type { RowSource } from './row-source.ts';

export interface RowsTogether {
  /** Codes of the rows, one array for each picture; used again for the next rows. */
  readonly data: readonly (Uint8Array | Uint16Array)[];
  readonly rows: number;
  /** Number of the first of them. */
  readonly y: number;
}

/** @throws RangeError if the pictures differ in size. */
export async function* rowsTogether(
  sources: readonly RowSource[],
  most: number,
): AsyncGenerator<RowsTogether> {
  const [first] = sources;
  for (const { width, height } of sources) {
    if (width !== first.width || height !== first.height) {
      throw new RangeError(
        `One picture is ${width} x ${height} pixels, another ${first.width} x ${first.height}.`,
      );
    }
  }
  const readers = sources.map((source) => rowReader(source, most));
  try {
    for (let y = 0; y < first.height; y += most) {
      const rows = Math.min(most, first.height - y);
      const data = await Promise.all(readers.map((reader) => reader.next(rows)));
      yield { data, rows, y };
    }
  } finally {
    await Promise.all(readers.map((reader) => reader.close()));
  }
}

/** Rows in portions of one's own choice, whatever the source's batches are. */
function rowReader(source: RowSource, most: number) {
  const line = source.width * source.channels;
  const out = source.depth === 16 ? new Uint16Array(most * line) : new Uint8Array(most * line);
  const batches = source.batches();
  let data: Uint8Array | Uint16Array = out;
  let [left, at] = [0, 0];
  return {
    async next(rows: number): Promise<Uint8Array | Uint16Array> {
      for (let filled = 0; filled < rows;) {
        if (left === 0) {
          const batch = await batches.next();
          if (batch.done) throw new RangeError('A picture has fewer rows than its head says.');
          [data, left, at] = [batch.value.data, batch.value.rows, 0];
        }
        const some = Math.min(left, rows - filled);
        out.set(data.subarray(at, at + some * line), filled * line);
        [filled, left, at] = [filled + some, left - some, at + some * line];
      }
      return out.subarray(0, rows * line);
    },
    async close() {
      await batches.return(undefined);
    },
  };
}
