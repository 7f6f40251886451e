/**
 * The few words of WebAssembly that this project's loops are written in: loops over millions of
 * numbers for which plain script is too slow. Every browser and Node have it, with vectors of 128
 * bits.
 *
 * References
 * - WebAssembly Core Specification 2.0, chapter 5 (binary format), 5.4.7 (numeric instructions)
 *   and 5.4.8 (vector instructions).
 */

export const i32 = 0x7f;
export const v128 = 0x7b;
export const localGet = 0x20;
export const localSet = 0x21;
export const localTee = 0x22;
export const i32Const = 0x41;
export const i32Add = 0x6a;
export const i32Sub = 0x6b;
export const i32Mul = 0x6c;
export const loop = [0x03, 0x40];
export const branchIf = 0x0d;
export const end = 0x0b;
export const vector = (operation: number): number[] => [0xfd, ...unsigned(operation)];

/** Unsigned LEB128. */
export function unsigned(value: number): number[] {
  const low = value & 0x7f;
  return value < 0x80 ? [low] : [low | 0x80, ...unsigned(value >>> 7)];
}

/** Signed LEB128 of a number from 0 on. */
export function constant(value: number): number[] {
  const low = value & 0x7f;
  return value < 0x40 ? [i32Const, low] : [i32Const, low | 0x80, ...constant(value >>> 7).slice(1)];
}

/** Alignment (as a power of two) and offset of a load or a store. */
export const address = (offset: number, align: number): number[] => [align, ...unsigned(offset)];

/** Add to a local. */
export const step = (local: number, by: number): number[] => [
  ...[localGet, local, ...constant(by), i32Add],
  ...[localSet, local],
];

export interface AssembledFunction {
  /** Number of parameters, all i32. */
  readonly parameters: number;
  /** Runs of further locals: count and type. */
  readonly locals: readonly (readonly [count: number, type: number])[];
  readonly body: readonly number[];
}

/** A module that has the memory `m.m` and exports its functions by name; none gives a value. */
export function assemble(
  functions: Readonly<Record<string, AssembledFunction>>,
): WebAssembly.Module {
  const all = Object.values(functions);
  const bodies = all.map(({ locals, body }) => {
    const code = [...counted(locals.map(([count, type]) => [...unsigned(count), type])), ...body];
    return sized([...code, end]);
  });
  return new WebAssembly.Module(
    Uint8Array.from([
      ...[0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
      ...section(
        1,
        all.map(({ parameters }) => [0x60, parameters, ...Array<number>(parameters).fill(i32), 0]),
      ),
      ...section(2, [[1, 0x6d, 1, 0x6d, 0x02, 0x00, 1]]),
      ...section(
        3,
        all.map((_, i) => unsigned(i)),
      ),
      ...section(
        7,
        Object.keys(functions).map((name, i) => [
          ...sized(Array.from(name, (c) => c.charCodeAt(0))),
          ...[0x00, ...unsigned(i)],
        ]),
      ),
      ...section(10, bodies),
    ]),
  );
}

const sized = (bytes: readonly number[]): number[] => [...unsigned(bytes.length), ...bytes];
const counted = (items: readonly (readonly number[])[]): number[] => [
  ...unsigned(items.length),
  ...items.flat(),
];
const section = (id: number, items: readonly (readonly number[])[]): number[] => [
  id,
  ...sized(counted(items)),
];
