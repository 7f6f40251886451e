/**
 * A picture as rows that pass by once: what readers give and what the pyramid, the warp and the
 * planes take. No picture is ever held whole, so memory grows with the width alone.
 */
import type { Light } from '../imaging/colour/light.ts';

/** Codes of `rows` rows, channels interleaved. Valid until the next batch is asked for. */
export interface RowBatch {
  readonly data: Uint8Array | Uint16Array;
  readonly rows: number;
}

export interface RowSource {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  readonly depth: 8 | 16;
  /** What the codes stand for. */
  readonly light: Light;
  /**
   * All rows, in order; may be called again for another pass.
   *
   * @param order `down` from the first row (the default), or `up` from the last row: then the
   *   rows of a batch come last row first as well.
   */
  batches(order?: 'down' | 'up'): AsyncGenerator<RowBatch>;
  /** Let go of files and scratch files. */
  close(): Promise<void>;
}
