/** What a merge found out, kept beside its pictures: `merge.json`. Light 1 is the standing frame's white. */
import { z } from 'zod';

const number = z.number();

export const mergeSchema = z.strictObject({
  width: number,
  height: number,
  curveFrom: z.enum(['profile', 'recovered', 'assumed sRGB']),
  noiseFrom: z.enum(['measured', 'assumed']),
  /** Variance per unit of signal, and in the dark; signal 1 is the largest code. */
  noise: z.strictObject({ gain: number, darkVariance: number }),
  frames: z.array(
    z.strictObject({
      /** Seconds as marked, and as merged with. */
      marked: number,
      seconds: number,
      /** Against the standing frame. */
      stops: number,
      clip: number,
      floor: number,
      /** Against the standing frame, pixels; null where it could not be measured. */
      shift: z.strictObject({ dx: number, dy: number, spread: number }).nullable(),
      resampled: z.boolean(),
      /** Share of places where it brings a twentieth of what is known. */
      contribution: number,
    }),
  ),
  steps: z.array(
    z.strictObject({
      shorter: number,
      longer: number,
      marked: number,
      measured: number.nullable(),
      uncertainty: number.nullable(),
    }),
  ),
  /** Lights: below the noise, above every clip level, extremes and mean of the picture. */
  floor: number,
  ceiling: number,
  darkest: number,
  brightest: number,
  logAverage: number,
  clippedEverywhere: number,
  belowNoise: number,
  tone: z.strictObject({ scale: number, white: number }),
  /** Of the local rendering. */
  compression: number,
  archive: z.array(
    z.strictObject({ name: z.string(), sha256: z.string(), bytes: number, label: z.string() }),
  ),
});
export type MergeRecord = z.output<typeof mergeSchema>;

/** The bracket as its findings and sentences name it. */
export interface NamedBracket {
  readonly id: string;
  readonly files: readonly { readonly name: string }[];
  readonly marked: readonly number[];
  readonly standing: number;
  /** True where the merge is laid into the frame of the base. */
  readonly placed: boolean;
}
