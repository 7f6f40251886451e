/**
 * The loop over the samples of a bracket, as WebAssembly: 180 million look-ups for five frames of
 * 12 megapixels, and as many weighted sums (measured: 1.5 s as script, 0.5 s here). Signal and
 * seconds of a code lie side by side in one table and are summed together, as vectors of two
 * 64-bit floats; of a clipped code both are 0, so that no branch is needed.
 */
import {
  address,
  assemble,
  branchIf,
  constant,
  end,
  i32,
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

export interface MergeTables {
  /** For each frame: signal and seconds of each code, one after the other; both 0 where clipped. */
  readonly codes: readonly Float32Array[];
  /** Bytes of a code of each frame. */
  readonly bytes: readonly (1 | 2)[];
  /** Weights of all frames for each step of radiance. */
  readonly weights: Float32Array;
  /** The bits of a rough radiance, shifted right so far, less the first, are its step. */
  readonly shift: number;
  readonly first: number;
  readonly last: number;
  /** Radiance that counts as held. */
  readonly floor: number;
}

export interface MergeLoop {
  /** Codes of each frame, filled in by the caller. */
  readonly codes: readonly (Uint8Array | Uint16Array)[];
  /** Radiance after `run`: +Infinity where nothing was held, NaN below the floor. */
  readonly out: Float32Array;
  readonly run: (count: number) => void;
}

/** @param samples Most samples of one run. */
export function mergeLoop(tables: MergeTables, samples: number): MergeLoop {
  let free = 0;
  const take = (bytes: number) => (free += Math.ceil(bytes / 16) * 16) - Math.ceil(bytes / 16) * 16;
  const tableAt = tables.codes.map((table) => take(table.byteLength));
  const weightsAt = take(tables.weights.byteLength);
  const codesAt = tables.bytes.map((bytes) => take(bytes * samples));
  const outAt = take(4 * samples);
  const memory = new WebAssembly.Memory({ initial: Math.ceil(free / 65536) });
  const { buffer } = memory;
  tables.codes.forEach((table, k) => {
    new Float32Array(buffer, tableAt[k], table.length).set(table);
  });
  new Float32Array(buffer, weightsAt, tables.weights.length).set(tables.weights);
  const module = assemble({ run: loopOver(tables, tableAt, weightsAt, codesAt) });
  const run = new WebAssembly.Instance(module, { m: { m: memory } }).exports['run'] as (
    ...numbers: number[]
  ) => void;
  return {
    codes: codesAt.map((at, k) =>
      tables.bytes[k] === 2
        ? new Uint16Array(buffer, at, samples)
        : new Uint8Array(buffer, at, samples),
    ),
    out: new Float32Array(buffer, outAt, samples),
    run: (count) => {
      if (count > 0) run(0, outAt, count);
    },
  };
}

const f64 = 0x7c;
const loadByte = 0x2d;
const loadShort = 0x2f;
const floatLoad = 0x2a;
const floatStore = 0x38;
const shiftLeft = 0x74;
const shiftRight = 0x75;
const less = 0x48;
const greater = 0x4a;
const select = 0x1b;
const divide = 0xa3;
const equal = 0x61;
const atLeast = 0x66;
const toFloat = 0xb6;
const toDouble = 0xbb;
const bitsOf = 0xbc;
const loadPair = vector(0x5d);
const widen = vector(0x5f);
const both = vector(0x14);
const add = vector(0xf0);
const multiply = vector(0xf2);
const lane = (n: number) => [...vector(0x21), n];
const float = (value: number) => [0x43, ...new Uint8Array(Float32Array.of(value).buffer)];
const double = (value: number) => [0x44, ...new Uint8Array(Float64Array.of(value).buffer)];

// Parameters: number of the sample, where it is written, how many are left. Then locals.
const [sample, to, left, place, radiance, sums, firstPair] = [0, 1, 2, 3, 4, 5, 6];

function loopOver(
  { bytes, shift, first, last, floor }: MergeTables,
  tableAt: readonly number[],
  weightsAt: number,
  codesAt: readonly number[],
) {
  const frames = bytes.length;
  const total = (of: (k: number) => number[]) =>
    bytes.flatMap((_, k) => [...of(k), ...(k > 0 ? [localGet, sums, ...add] : []), localSet, sums]);
  const codeOf = (k: number) =>
    bytes[k] === 2
      ? [localGet, sample, ...constant(1), shiftLeft, loadShort, ...address(codesAt[k], 1)]
      : [localGet, sample, loadByte, ...address(codesAt[k], 0)];
  const pairOf = (k: number) => [
    ...[...codeOf(k), ...constant(3), shiftLeft, ...loadPair, ...address(tableAt[k], 3)],
    ...[...widen, localTee, firstPair + k],
  ];
  const weighted = (k: number) => [
    ...[localGet, firstPair + k],
    ...[localGet, place, floatLoad, ...address(weightsAt + 4 * k, 2), toDouble, ...both],
    ...multiply,
  ];
  const quotient = [localGet, sums, ...lane(0), localGet, sums, ...lane(1), divide];
  const body = [
    ...loop,
    ...total(pairOf),
    ...[...quotient, toFloat, bitsOf, ...constant(shift), shiftRight],
    ...[...constant(first), i32Sub, localTee, place, ...constant(0)],
    ...[localGet, place, ...constant(0), greater, select, localTee, place, ...constant(last)],
    ...[localGet, place, ...constant(last), less, select],
    ...[...constant(4 * frames), i32Mul, localSet, place],
    ...total(weighted),
    ...[...quotient, localSet, radiance],
    ...[localGet, to, localGet, radiance, toFloat],
    ...[...float(Infinity), ...float(NaN), localGet, sums, ...lane(1), ...double(0), equal, select],
    ...[localGet, radiance, ...double(floor), atLeast, select],
    ...[floatStore, ...address(0, 2)],
    ...[...step(sample, 1), ...step(to, 4)],
    ...[localGet, left, ...constant(1), i32Sub, localTee, left, branchIf, 0],
    end,
  ];
  const locals = [
    [1, i32],
    [1, f64],
    [1 + frames, v128],
  ] as const;
  return { parameters: 3, locals, body };
}
