/**
 * Many dot products of the same length, four at a time: the one loop of the whole program that
 * plain script is too slow for (48 photographs of 6 megapixels need 15 thousand million products;
 * measured 10 s as script, 3 s with the processor's vectors). The loop is written as WebAssembly
 * with 128-bit vectors, which every browser and Node have, and assembled here for the number of
 * planes, so that all sums of two pixels stay in registers.
 *
 * Sums are of 32-bit floats in a fixed order: the same on every machine.
 *
 * References
 * - WebAssembly Core Specification 2.0, chapter 5 (binary format) and 5.4.8 (vector
 *   instructions).
 */

export interface ProjectionKernel {
  /** Values of `tile` pixels, `length` for each pixel: filled in by the caller. */
  readonly values: Float32Array;
  /** After `run`: sums of each pixel, `stride` for each, the first `planes` of them valid. */
  readonly sums: Float32Array;
  readonly stride: number;
  run(): void;
}

/**
 * A kernel for pixels of `length` values and weights of `planes` planes.
 *
 * @param weights Row-major: for each of the `length` values its weight in every plane.
 * @param tile Pixels of one run, an even number.
 */
export function projectionKernel(
  weights: ArrayLike<number>,
  length: number,
  planes: number,
  tile: number,
): ProjectionKernel {
  const vectors = Math.ceil(planes / 4);
  const stride = vectors * 4;
  const at = { values: 0, weights: tile * length * 4, sums: (tile + stride) * length * 4 };
  const bytes = at.sums + tile * stride * 4;
  const memory = new WebAssembly.Memory({ initial: Math.ceil(bytes / 65536) });
  const module = new WebAssembly.Module(moduleBytes(vectors));
  const { exports } = new WebAssembly.Instance(module, { m: { m: memory } });
  const run = exports['r'] as (...numbers: number[]) => void;
  const table = new Float32Array(memory.buffer, at.weights, length * stride);
  for (let j = 0; j < length; j += 1) {
    for (let k = 0; k < planes; k += 1) table[j * stride + k] = weights[j * planes + k];
  }
  return {
    values: new Float32Array(memory.buffer, at.values, tile * length),
    sums: new Float32Array(memory.buffer, at.sums, tile * stride),
    stride,
    run: () => {
      run(at.values, at.weights, at.sums, tile / 2, length);
    },
  };
}

const i32 = 0x7f;
const v128 = 0x7b;
const localGet = 0x20;
const localSet = 0x21;
const localTee = 0x22;
const i32Const = 0x41;
const i32Add = 0x6a;
const i32Sub = 0x6b;
const i32Mul = 0x6c;
const loop = [0x03, 0x40];
const branchIf = 0x0d;
const end = 0x0b;
const vector = (operation: number): number[] => [0xfd, ...unsigned(operation)];
const vectorLoad = vector(0x00);
const vectorLoadSplat = vector(0x09);
const vectorStore = vector(0x0b);
const vectorConst = vector(0x0c);
const floatAdd = vector(0xe4);
const floatMultiply = vector(0xe6);

/** Unsigned LEB128. */
function unsigned(value: number): number[] {
  const low = value & 0x7f;
  return value < 0x80 ? [low] : [low | 0x80, ...unsigned(value >>> 7)];
}

/** Signed LEB128 of a number from 0 on. */
function constant(value: number): number[] {
  const low = value & 0x7f;
  return value < 0x40 ? [i32Const, low] : [i32Const, low | 0x80, ...constant(value >>> 7).slice(1)];
}

function section(id: number, content: readonly number[]): number[] {
  return [id, ...unsigned(content.length), ...content];
}

/** `run(values, weights, sums, pairs, length)` over memory `m.m`. */
function moduleBytes(vectors: number): Uint8Array<ArrayBuffer> {
  const body = [...localDeclarations(vectors), ...pairLoop(vectors), end];
  return new Uint8Array([
    ...[0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
    ...section(1, [1, 0x60, 5, i32, i32, i32, i32, i32, 0]),
    ...section(2, [1, 1, 0x6d, 1, 0x6d, 0x02, 0x00, 1]),
    ...section(3, [1, 0]),
    ...section(7, [1, 1, 0x72, 0x00, 0]),
    ...section(10, [1, ...unsigned(body.length), ...body]),
  ]);
}

// Locals: the five parameters, then where the loop stands, then vectors.
const [values, weights, sums, pairs, length] = [0, 1, 2, 3, 4];
const [second, weight, left] = [5, 6, 7];
const [one, two, factor, firstSum] = [8, 9, 10, 11];

function localDeclarations(vectors: number): number[] {
  return [2, 3, i32, 3 + 2 * vectors, v128];
}

const step = (local: number, by: number) => [
  ...[localGet, local, ...constant(by), i32Add],
  ...[localSet, local],
];
const address = (offset: number, align: number) => [align, ...unsigned(offset)];

function pairLoop(vectors: number): number[] {
  const each = Array.from({ length: 2 * vectors }, (_, v) => v);
  const nothing = [...vectorConst, ...new Array<number>(16).fill(0)];
  return [
    ...loop,
    ...each.flatMap((v) => [...nothing, localSet, firstSum + v]),
    ...[localGet, values, localGet, length, ...constant(4), i32Mul, i32Add, localSet, second],
    ...[localGet, weights, localSet, weight, localGet, length, localSet, left],
    ...valueLoop(vectors),
    ...each.flatMap((v) => [
      ...[localGet, sums, localGet, firstSum + v],
      ...[...vectorStore, ...address(16 * v, 4)],
    ]),
    ...step(sums, 32 * vectors),
    ...[localGet, second, localSet, values],
    ...[localGet, pairs, ...constant(1), i32Sub, localTee, pairs, branchIf, 0],
    end,
  ];
}

function valueLoop(vectors: number): number[] {
  const add = (sum: number, value: number) => [
    ...[localGet, sum, localGet, value, localGet, factor],
    ...[...floatMultiply, ...floatAdd, localSet, sum],
  ];
  return [
    ...loop,
    ...[localGet, values, ...vectorLoadSplat, ...address(0, 2), localSet, one],
    ...[localGet, second, ...vectorLoadSplat, ...address(0, 2), localSet, two],
    ...Array.from({ length: vectors }, (_, v) => [
      ...[localGet, weight, ...vectorLoad, ...address(16 * v, 4), localSet, factor],
      ...add(firstSum + v, one),
      ...add(firstSum + vectors + v, two),
    ]).flat(),
    ...[...step(values, 4), ...step(second, 4), ...step(weight, 16 * vectors)],
    ...[localGet, left, ...constant(1), i32Sub, localTee, left, branchIf, 0],
    end,
  ];
}
