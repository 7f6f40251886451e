/**
 * Many dot products of the same length, four at a time: the one loop of the whole program that
 * plain script is too slow for (48 photographs of 6 megapixels need 15 thousand million products;
 * measured 10 s as script, 3 s with the processor's vectors). The loop is written as WebAssembly
 * with 128-bit vectors, which every browser and Node have, and assembled here for the number of
 * planes, so that all sums of two pixels stay in registers.
 *
 * Sums are of 32-bit floats in a fixed order: the same on every machine.
 */
import {
  address,
  assemble,
  branchIf,
  constant,
  end,
  i32,
  i32Add,
  i32Mul,
  i32Sub,
  localGet,
  localSet,
  localTee,
  loop,
  step,
  v128,
  vector,
} from '../assembly.ts';

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
  const module = kernelModule(vectors);
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

const vectorLoad = vector(0x00);
const vectorLoadSplat = vector(0x09);
const vectorStore = vector(0x0b);
const vectorConst = vector(0x0c);
const floatAdd = vector(0xe4);
const floatMultiply = vector(0xe6);

/** `r(values, weights, sums, pairs, length)`. */
function kernelModule(vectors: number): WebAssembly.Module {
  const locals = [[3, i32] as const, [3 + 2 * vectors, v128] as const];
  return assemble({ r: { parameters: 5, locals, body: pairLoop(vectors) } });
}

// Locals: the five parameters, then where the loop stands, then vectors.
const [values, weights, sums, pairs, length] = [0, 1, 2, 3, 4];
const [second, weight, left] = [5, 6, 7];
const [one, two, factor, firstSum] = [8, 9, 10, 11];

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
