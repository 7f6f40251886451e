/**
 * One sentence from a check. Checks collect findings; they do not stop at the first.
 */
import { z } from 'zod';

export const findingSchema = z.strictObject({
  /** `error` stops the plate, `warning` asks a person to look, `note` is for the record. */
  level: z.enum(['error', 'warning', 'note']),
  /** Slug of the plate; empty when the finding is about the collection. */
  plate: z.string(),
  /** Id of the capture, where there is one. */
  capture: z.string().nullable(),
  /** File the finding is about, relative to the plate's folder, where there is one. */
  file: z.string().nullable(),
  /** Line in that file, from 1, for text files. */
  line: z.number().int().positive().nullable().default(null),
  /** Column in that line, from 1, where it is known. */
  column: z.number().int().positive().optional(),
  /** Field of a record, such as `captures.2.seconds`, where it is about one. */
  field: z.string().optional(),
  /** Stable word for programs and for the technique pages: `clipped`, `unknown-key`. */
  code: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  /** What was found and what was expected: a full sentence with its values. */
  message: z.string(),
  /** What to do next. */
  remedy: z.string(),
  /** What was measured, with its unit, where the finding rests on a measurement. */
  measured: z
    .strictObject({ value: z.number(), unit: z.string(), expected: z.string() })
    .nullable()
    .default(null),
  /** The named table that the expectation comes from, such as `FADGI 2016, 3 star`. */
  edition: z.string().nullable().default(null),
});

export type Finding = z.output<typeof findingSchema>;

/** Put the usual nulls in: a finding about a plate, said in as few words as it needs. */
export function finding(
  parts: Pick<Finding, 'level' | 'plate' | 'code' | 'message' | 'remedy'> & Partial<Finding>,
): Finding {
  return { capture: null, file: null, line: null, measured: null, edition: null, ...parts };
}
