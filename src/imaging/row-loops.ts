/**
 * The loops of a pyramid over rows, as WebAssembly. A plate of 900 megapixels has 2700 million
 * samples, and each is looked up twice: plain script took more time for that than all JPEG coding
 * leaves room for (5 ns a sample, 1.2 here).
 *
 * The numbers are those of plain 64-bit arithmetic rounded to 32 bits once: a sum of two 32-bit
 * numbers rounds in the same way, and halving is exact.
 */
import {
  address,
  assemble,
  branchIf,
  constant,
  end,
  i32Sub,
  localGet,
  localSet,
  localTee,
  loop,
  step,
  v128,
  vector,
} from './assembly.ts';
import { byteOfLight, byteSteps, type Light } from './colour/light.ts';

export interface RowLoops {
  /** One row of the source; filled in by the caller. */
  readonly codes: Uint8Array | Uint16Array;
  /** The painted row: that of `codes` itself where a code is its own byte. */
  readonly bytes: Uint8Array;
  /** A row of linear light, in the memory of the loops. */
  readonly floats: (length: number) => Float32Array;
  /** `codes` to sRGB bytes, by the light's own table; its matrix is not looked at. */
  readonly paintCodes: () => void;
  /** A row of linear light to sRGB bytes, likewise. */
  readonly paintLight: (row: Float32Array) => void;
  /** Means of `pairs` neighbouring pixels of `codes`, in linear light. */
  readonly codeMeans: (means: Float32Array, pairs: number) => void;
  /** The same, and the mean of that and of what `means` holds. */
  readonly joinCodeMeans: (means: Float32Array, pairs: number) => void;
  /** Means of `pairs` neighbouring pixels of a row of linear light. */
  readonly lightMeans: (row: Float32Array, means: Float32Array, pairs: number) => void;
  readonly joinLightMeans: (row: Float32Array, means: Float32Array, pairs: number) => void;
}

export interface RowShape {
  readonly width: number;
  readonly channels: 1 | 3;
  readonly depth: 8 | 16;
  readonly light: Light;
}

/** Where the tables lie; the rows follow. */
const tables = { linear: 0, bytes: 0x40000, light: 0x50000, end: 0x90010 };

/**
 * @param floats How many samples of linear light will be asked for in all, by how many calls.
 */
export function rowLoops(
  { width, channels, depth, light }: RowShape,
  floats: { readonly samples: number; readonly rows: number },
): RowLoops {
  const samples = width * channels;
  // Vectors may write up to 15 bytes behind a row.
  const aligned = (bytes: number) => Math.ceil(bytes / 16 + 1) * 16;
  let free = tables.end;
  const take = (bytes: number) => (free += aligned(bytes)) - aligned(bytes);
  const size = tables.end + 2 * aligned(2 * samples) + 4 * floats.samples + 32 * (floats.rows + 1);
  const memory = new WebAssembly.Memory({ initial: Math.ceil(size / 65536) });
  const { buffer } = memory;
  new Float32Array(buffer, tables.linear).set(light.toLinear);
  new Uint8Array(buffer, tables.bytes).set(light.toByte);
  new Uint8Array(buffer, tables.light).set(byteOfLight);
  const instance = new WebAssembly.Instance(loops(channels, depth), { m: { m: memory } });
  const call = instance.exports as Record<string, (...numbers: number[]) => void>;

  const codesAt = take(2 * samples);
  const codes =
    depth === 16
      ? new Uint16Array(buffer, codesAt, samples)
      : new Uint8Array(buffer, codesAt, samples);
  // Most photographs of 8 bits are coded as they are shown: then the row is painted already.
  const same = depth === 8 && !light.matrix && light.toByte.every((byte, code) => byte === code);
  const bytes = new Uint8Array(buffer, same ? codesAt : take(samples), samples);
  const rounds = depth === 16 && light.toByte.every((byte, code) => byte === rounded(code));
  return {
    codes,
    bytes,
    floats: (length) => new Float32Array(buffer, take(4 * length), length),
    paintCodes() {
      if (same) return;
      if (rounds) call['round'](codesAt, bytes.byteOffset, Math.ceil(samples / 16));
      else call['paintCodes'](codesAt, bytes.byteOffset, samples);
    },
    paintLight(row) {
      call['paintLight'](row.byteOffset, bytes.byteOffset, Math.ceil(row.length / 4));
    },
    codeMeans(means, pairs) {
      if (pairs > 0) call['codeMeans'](codesAt, means.byteOffset, pairs);
    },
    joinCodeMeans(means, pairs) {
      if (pairs > 0) call['joinCodeMeans'](codesAt, means.byteOffset, pairs);
    },
    lightMeans(row, means, pairs) {
      if (pairs > 0) call['lightMeans'](row.byteOffset, means.byteOffset, pairs);
    },
    joinLightMeans(row, means, pairs) {
      if (pairs > 0) call['joinLightMeans'](row.byteOffset, means.byteOffset, pairs);
    },
  };
}

/** A 16-bit code to the nearest of 256, in 16-bit integers: what the vector loop does. */
const rounded = (code: number): number => {
  const moved = Math.min(65535, code + 128);
  return (moved - (moved >> 8)) >> 8;
};

const loadByte = [0x2d];
const loadCode = { 8: [0x2d, ...address(0, 0)], 16: [0x2f, ...address(0, 1)] };
const at = (load: readonly number[], offset: number, align: number) => [
  load[0],
  ...address(offset, align),
];
const storeByte = 0x3a;
const floatLoad = 0x2a;
const floatStore = 0x38;
const floatAdd = 0x92;
const floatMultiply = 0x94;
const half = [0x43, ...new Uint8Array(Float32Array.of(0.5).buffer)];
const shiftLeft = 0x74;

// Parameters of every loop: where it reads, where it writes, how often.
const [from, to, times] = [0, 1, 2];
const repeat = (body: readonly number[], read: number, write: number): number[] => [
  ...loop,
  ...body,
  ...[...step(from, read), ...step(to, write)],
  ...[localGet, times, ...constant(1), i32Sub, localTee, times, branchIf, 0],
  end,
];

function loops(channels: 1 | 3, depth: 8 | 16): WebAssembly.Module {
  const codeBytes = depth / 8;
  const each = Array.from({ length: channels }, (_, c) => c);
  const code = (n: number) => [
    ...[localGet, from, ...at(loadCode[depth], n * codeBytes, depth === 16 ? 1 : 0)],
  ];
  const linear = (n: number) => [
    ...[...code(n), ...constant(2), shiftLeft],
    ...[floatLoad, ...address(tables.linear, 2)],
  ];
  const lightOf = (n: number) => [localGet, from, floatLoad, ...address(4 * n, 2)];
  const means = (sample: (n: number) => number[], joined: boolean) =>
    each.flatMap((c) => [
      ...[localGet, to, ...sample(c), ...sample(c + channels), floatAdd, ...half, floatMultiply],
      ...(joined
        ? [localGet, to, floatLoad, ...address(4 * c, 2), floatAdd, ...half, floatMultiply]
        : []),
      ...[floatStore, ...address(4 * c, 2)],
    ]);
  const pixel = { codes: 2 * channels * codeBytes, light: 8 * channels, means: 4 * channels };
  const written = (body: number[]) => ({ parameters: 3, locals: [], body });
  return assemble({
    paintCodes: written(
      repeat(
        [
          ...[localGet, to, ...code(0), ...at(loadByte, tables.bytes, 0)],
          ...[storeByte, ...address(0, 0)],
        ],
        codeBytes,
        1,
      ),
    ),
    round: { parameters: 3, locals: [[2, v128]], body: repeat(roundSixteen(), 32, 16) },
    paintLight: { parameters: 3, locals: [[1, v128]], body: repeat(paintFour(), 16, 4) },
    codeMeans: written(repeat(means(linear, false), pixel.codes, pixel.means)),
    joinCodeMeans: written(repeat(means(linear, true), pixel.codes, pixel.means)),
    lightMeans: written(repeat(means(lightOf, false), pixel.light, pixel.means)),
    joinLightMeans: written(repeat(means(lightOf, true), pixel.light, pixel.means)),
  });
}

/** {@link rounded} of sixteen codes. */
function roundSixteen(): number[] {
  const [vectorLoad, vectorStore] = [vector(0x00), vector(0x0b)];
  const all = (value: number) => [
    ...vector(0x0c),
    ...new Array<number[]>(8).fill([value, 0]).flat(),
  ];
  const [addSaturated, subtract] = [vector(0x90), vector(0x91)];
  const shiftRight = [...constant(8), ...vector(0x8d)];
  const eight = (moved: number, offset: number) => [
    ...[localGet, from, ...vectorLoad, ...address(offset, 4)],
    ...[...all(128), ...addSaturated, localTee, moved],
    ...[localGet, moved, ...shiftRight, ...subtract, ...shiftRight],
  ];
  return [
    ...[localGet, to, ...eight(3, 0), ...eight(4, 16)],
    ...[...vector(0x66), ...vectorStore, ...address(0, 4)],
  ];
}

/** Four samples of linear light to the nearest steps of the table, and their bytes. */
function paintFour(): number[] {
  const all = (value: number) => [
    ...vector(0x0c),
    ...new Uint8Array(new Float32Array(4).fill(value).buffer),
  ];
  const [add, multiply, truncate] = [vector(0xe4), vector(0xe6), vector(0xf8)];
  const steps = 3;
  return [
    ...[localGet, from, ...vector(0x00), ...address(0, 2), ...all(byteSteps), ...multiply],
    ...[...all(0.5), ...add, ...truncate, localSet, steps],
    ...[0, 1, 2, 3].flatMap((lane) => [
      ...[localGet, to, localGet, steps, ...vector(0x1b), lane],
      ...[...at(loadByte, tables.light, 0), storeByte, ...address(lane, 0)],
    ]),
  ];
}
