/** What many parts of a plate's result are written with. */
import { z } from 'zod';

/** SHA-256, hex. */
export const digest = z.string().regex(/^[0-9a-f]{64}$/);

/** Of a picture, pixels. */
export const size = z.strictObject({
  width: z.number().int().positive(),
  height: z.number().int().positive(),
});
