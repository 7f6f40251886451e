/**
 * `sitting.yaml`: what was photographed in one uninterrupted time under the camera, and how.
 * Silence is allowed almost everywhere: EXIF fills what it knows, and the rest stays unknown.
 */
import { z } from 'zod';
import { captureFile, id, millimetres, text } from './fields.ts';
import { readings, setupKinds } from './vocabulary.ts';

const bearing = z.number().min(0).max(360);
const height = z.number().min(0).max(90);
const seconds = z.number().positive('seconds above 0');
const point = z.tuple([z.number(), z.number()]);

const lamp = z.strictObject({
  /** Degrees clockwise from the plate's top edge as the camera sees it. */
  bearing: bearing.optional(),
  /** Degrees above the plate's plane. */
  height: height.optional(),
  /** From the plate's centre, mm. */
  distance: millimetres.optional(),
  kind: z
    .enum(['led', 'tungsten', 'halogen', 'flash', 'fluorescent', 'daylight', 'other'])
    .optional(),
  /** Width of the lit face, mm. */
  size: millimetres.optional(),
  /** Width of a diffuser before the lamp, mm; or whether there is one. */
  diffuser: z.union([z.boolean(), millimetres]).optional(),
  polariser: z.boolean().optional(),
});

const setup = z.strictObject({
  kind: z.enum(setupKinds),
  lamps: z.array(lamp).default([]),
  /** What the mirror reflects into the lens. */
  surround: z.enum(['dark', 'bright', 'mixed']).optional(),
  /** The sheet of glass at 45 degrees for an axial set-up. */
  glass: z
    .strictObject({
      index: z.number().gt(1).lt(3).optional(),
      thickness: millimetres.optional(),
      angle: z.number().min(0).max(90).optional(),
    })
    .optional(),
  note: text.optional(),
});

const exposure = z.strictObject({
  seconds: seconds.optional(),
  aperture: z.number().positive().optional(),
  iso: z.number().positive().optional(),
});

const frame = z.strictObject({
  file: captureFile,
  seconds: seconds.optional(),
  bearing: bearing.optional(),
  height: height.optional(),
  /** Place in a mosaic, from 0 at the top left. */
  row: z.number().int().min(0).optional(),
  column: z.number().int().min(0).optional(),
});

const capture = z
  .strictObject({
    id,
    /** One picture, or a set that makes one picture. */
    kind: z.enum(['single', 'bracket', 'lights', 'mosaic']).default('single'),
    file: captureFile.optional(),
    frames: z.array(frame).min(2, 'at least two frames').optional(),
    /** Name of one of `setups`, or one of the kinds of set-up. */
    setup: text,
    reading: z.enum(readings),
    exposure: exposure.optional(),
    /** Glossy ball in the frame: centre and radius in pixels. */
    ball: z
      .strictObject({ x: z.number(), y: z.number(), radius: z.number().positive() })
      .optional(),
    /** Part of each side that neighbouring frames of a mosaic share, 0 to 1. */
    overlap: z.number().gt(0).lt(1).optional(),
    /** Frame of an even white field under the same light. */
    blank: captureFile.optional(),
    target: z
      .strictObject({
        file: captureFile.optional(),
        kind: z.enum(['24-patch', 'slanted-edge', 'scale']),
        /** Corners in pixels, clockwise from the top left. */
        corners: z.tuple([point, point, point, point]).optional(),
      })
      .optional(),
    /** Pairs of points, pixels in this capture and in the base, as a start for the alignment. */
    controlPoints: z
      .array(z.strictObject({ here: point, base: point }))
      .min(4)
      .optional(),
    note: text.optional(),
  })
  .refine((c) => (c.kind === 'single' ? c.file !== undefined : c.frames !== undefined), {
    message: 'a "file" for a single capture, or "frames" for a bracket, lights or a mosaic',
  })
  .refine((c) => !(c.file !== undefined && c.frames !== undefined), {
    message: 'either "file" or "frames", not both',
  });

export const sittingSchema = z.strictObject({
  /** Day of the sitting. */
  date: z.iso.date().optional(),
  /** A role or a name. */
  operator: text.optional(),
  camera: z
    .strictObject({
      make: text.optional(),
      model: text.optional(),
      lens: text.optional(),
      /** mm */
      focalLength: millimetres.optional(),
      aperture: z.number().positive().optional(),
      iso: z.number().positive().optional(),
      /** From the lens to the plate, mm. */
      distance: millimetres.optional(),
    })
    .default({}),
  scale: z
    .strictObject({
      pixelsPerMillimetre: z.number().positive(),
      /** Standard uncertainty of that figure, pixels per mm. */
      uncertainty: z.number().positive().optional(),
      from: z.enum(['target', 'plate-edges', 'stated']).default('stated'),
    })
    .optional(),
  /** Id of the capture that defines the plate's pixel frame; the first one where nothing is said. */
  base: id.optional(),
  setups: z.record(id, setup).default({}),
  captures: z.array(capture).min(1, 'at least one capture'),
});

export type SittingRecord = z.output<typeof sittingSchema>;
export type CaptureRecord = SittingRecord['captures'][number];
export type SetupRecord = SittingRecord['setups'][string];
export type LampRecord = SetupRecord['lamps'][number];

/** The set-up that a capture names; a bare kind stands for a set-up of that kind with nothing recorded. */
export function setupOf(sitting: SittingRecord, capture: CaptureRecord): SetupRecord | null {
  const named = sitting.setups[capture.setup] as SetupRecord | undefined;
  if (named) return named;
  const kind = setupKinds.find((k) => k === capture.setup);
  return kind ? { kind, lamps: [] } : null;
}
