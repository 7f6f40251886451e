/** What was found out about a plate's pair of readings: where it turns, and the stills between. */
import { z } from 'zod';
import { tiltReadings } from '../imaging/tilt.ts';
import { digest, size } from './result-parts.ts';

/** Where the pair turns from positive to negative: b / a, see `src/imaging/tilt.ts`. */
const turn = z.strictObject({
  /** Of the plate; null with the reason. */
  value: z.number().nullable(),
  reason: z.string().nullable(),
  /** Coarse grid over the plate's frame, row-major; null where it cannot be told. */
  map: z.strictObject({
    columns: z.number().int().positive(),
    rows: z.number().int().positive(),
    values: z.array(z.number().nullable()),
  }),
  /** Quartiles of the fields. */
  lower: z.number().nullable(),
  upper: z.number().nullable(),
  /** Share of the fields that have tones in which the negative reverses them, 0 to 1. */
  reversing: z.number().nullable(),
});
export type PairTurn = z.output<typeof turn>;

/** Stills on the way from the positive to the negative, `plates/<slug>/tilt/<n>.webp`. */
export const tiltStillsSchema = z.strictObject({
  /** Folder in the store; also the digest of everything that made it. */
  folder: digest,
  ...size.shape,
  /** In the order of their numbers, from 0. */
  steps: z.array(
    z.strictObject({
      /** Degrees, in a room with one window. */
      tilt: z.number(),
      /** Null where it cannot be told. */
      reading: z.enum(tiltReadings).nullable(),
    }),
  ),
});
export type TiltStills = z.output<typeof tiltStillsSchema>;

/** Ids of the positive- and the negative-reading view in register, and what lies between. */
export const pairSchema = z.strictObject({
  positive: z.string(),
  negative: z.string(),
  turn: turn.nullable(),
  stills: tiltStillsSchema.nullable(),
});
