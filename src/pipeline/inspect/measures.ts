/** What is kept of a capture's measurements: plain JSON, so that it is measured once. */
import { z } from 'zod';

const pair = z.tuple([z.number(), z.number()]);

/** A measurement that may fail with a reason. */
function estimate<T extends z.ZodType>(value: T) {
  return z.discriminatedUnion('ok', [
    z.strictObject({ ok: z.literal(true), value }),
    z.strictObject({ ok: z.literal(false), reason: z.string() }),
  ]);
}

export const measuresSchema = z.strictObject({
  /** File that speaks for the capture, and its size in pixels. */
  file: z.string(),
  width: z.number(),
  height: z.number(),
  /** The plate's corners in pixels of that file, clockwise from the top left. */
  outline: estimate(z.strictObject({ corners: z.array(pair).length(4), uncertainty: z.number() })),
  clipping: z.strictObject({
    imageShare: z.number(),
    edgeShare: z.number(),
    map: z.strictObject({ columns: z.number(), rows: z.number(), values: z.array(z.number()) }),
  }),
  blur: estimate(z.strictObject({ sigma: z.number(), edges: z.number() })),
  blank: estimate(
    z.strictObject({
      file: z.string(),
      degree: z.number(),
      coefficients: z.array(z.number()),
      middle: z.number(),
      spreadPercent: z.number(),
      darkestOverBrightest: z.number(),
      brightest: z.strictObject({ across: z.number(), down: z.number() }),
      map: z.strictObject({ columns: z.number(), rows: z.number(), values: z.array(z.number()) }),
      hotSpots: z.array(
        z.strictObject({ across: z.number(), down: z.number(), excessPercent: z.number() }),
      ),
    }),
  ).nullable(),
  edge: estimate(
    z.strictObject({
      mtf50: z.number().nullable(),
      mtf10: z.number().nullable(),
      atHalfSampling: z.number(),
      maximum: z.number(),
    }),
  ).nullable(),
  colour: estimate(
    z.strictObject({
      edition: z.enum(['before-2014-11', 'from-2014-11']),
      mean: z.number(),
      max: z.number(),
      worstPatch: z.number(),
      tone: z.number(),
      whiteBalance: z.number(),
      noise: z.number(),
      /** Mean CIEDE2000 against the other edition. */
      otherEdition: z.number(),
      /** Least mean CIEDE2000 over the orders in which corners can be given, and which. */
      bestOrder: z.strictObject({ mean: z.number(), order: z.string() }),
    }),
  ).nullable(),
  /** Stops from each frame of a bracket to the next, as the light says; null where it cannot. */
  steps: z.array(z.number().nullable()),
});
export type Measures = z.output<typeof measuresSchema>;
