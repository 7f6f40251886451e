/**
 * Which column of a register is which field of a plate: a YAML file that the museum writes once
 * for its own register.
 */
import { z } from 'zod';
import { text } from '../fields.ts';

const columnPhrase = 'the name of a column, or { column, words, separator } or { value }';

const source = z.union(
  [
    text,
    z.strictObject({
      /** Name in the first line of the register. */
      column: text,
      /** Words of the register to words of the record: `{ Daguerreotypie: daguerreotype }`. */
      words: z.record(z.string(), z.string()).default({}),
      /** What stands between several values in one cell. */
      separator: text.optional(),
    }),
    /** The same for every plate. */
    z.strictObject({ value: text }),
  ],
  columnPhrase,
);

/** Fields that a register can fill; a plate's own words stay with the person who writes them. */
export const registerFields = [
  'title',
  'objectNumber',
  'identifier',
  'process',
  'maker',
  'date',
  'place',
  'width',
  'height',
  'orientation',
  'positive',
  'negative',
  'rights',
  'credit',
  'advisory',
] as const;
export type RegisterField = (typeof registerFields)[number];

export const mappingSchema = z.strictObject({
  /** Column that gives the plate's name in addresses. */
  slug: text,
  /** Sign between the columns; found by itself where nothing is said. */
  separator: z.string().length(1).optional(),
  fields: z.strictObject(
    Object.fromEntries(registerFields.map((name) => [name, source.optional()])) as Record<
      RegisterField,
      z.ZodOptional<typeof source>
    >,
  ),
  /** Columns that are left out on purpose: they are not told of. */
  ignore: z.array(text).default([]),
});
export type RegisterMapping = z.output<typeof mappingSchema>;
export type FieldSource = z.output<typeof source>;

/** Column that a field comes from; null for a fixed value. */
export function columnOf(from: FieldSource): string | null {
  if (typeof from === 'string') return from;
  return 'column' in from ? from.column : null;
}
