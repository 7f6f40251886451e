/** The parts of the npm package `edtf` that the tests use as an oracle; it carries no types. */
declare module 'edtf' {
  /** First and last moment, milliseconds since 1970; throws for text that is no EDTF. */
  export default function edtf(text: string): { readonly min: number; readonly max: number };
}
