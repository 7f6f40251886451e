/** One channel of an image, row-major: sample (row, column) is `data[row * width + column]`. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/**
 * One channel of linear light in 16 bits, row-major, 0 to 65535 for black to the
 * capture's white. The form in which whole captures are held: half the memory of a {@link Plane}.
 */
export interface Plane16 {
  readonly width: number;
  readonly height: number;
  readonly data: Uint16Array;
}

/** What an estimate gives: a value, or the reason why there is none. Never a bad number. */
export type Estimate<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };
