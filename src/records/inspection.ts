/** What was measured in a capture: the part of `record.json` that *inspect* fills in. */
import { z } from 'zod';

/** A coarse map over a picture, row-major; null where nothing could be measured. */
const gridMap = z.strictObject({
  kind: z.enum(['evenness', 'clipping']),
  columns: z.number().int().positive(),
  rows: z.number().int().positive(),
  values: z.array(z.number().nullable()),
  unit: z.string(),
  /** What the map shows and where it comes from, a sentence for the reader. */
  caption: z.string(),
  /** Places worth a look, 0 to 1 across and down the picture. */
  marks: z.array(z.strictObject({ across: z.number(), down: z.number(), label: z.string() })),
});
export type GridMap = z.output<typeof gridMap>;

/** What was measured in a capture's first frame (the shortest exposure of a bracket). */
export const inspectionSchema = z.strictObject({
  measurements: z.array(
    z.strictObject({
      /** Stable word for programs: `resolution`, `evenness`, `edge-blur`. */
      quantity: z.string(),
      /** For the reader: `Resolution at the plate's size`. */
      label: z.string(),
      value: z.number(),
      /** Standard uncertainty, in the same unit. */
      uncertainty: z.number().nullable(),
      unit: z.string(),
      /** How it stands against a named table, `within the 3-star figure for ...`. */
      standing: z.string().nullable(),
      /** The table's name, with its status where it was not itself seen. */
      edition: z.string().nullable(),
      /** What it was measured from, where that matters. */
      from: z.string().nullable(),
    }),
  ),
  maps: z.array(gridMap),
  /** Corners of the plate in the picture, clockwise from the top left, 0 to 1; null when not found. */
  outline: z
    .array(z.tuple([z.number(), z.number()]))
    .length(4)
    .nullable(),
  /** The blank field's surface, for whoever evens out the picture: see flat-field.ts. */
  flatField: z
    .strictObject({
      file: z.string(),
      degree: z.number().int(),
      coefficients: z.array(z.number()),
      middle: z.number(),
    })
    .nullable(),
});
export type Inspection = z.output<typeof inspectionSchema>;
