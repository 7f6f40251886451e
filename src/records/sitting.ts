/**
 * `sitting.yaml`: what was photographed in one uninterrupted time under the camera, and how.
 * Silence is allowed almost everywhere: EXIF fills what it knows, and the rest stays unknown.
 */
import { z } from 'zod';
import { amount, between, captureFile, id, millimetres, text } from './fields.ts';
import { readings, setupKinds } from './vocabulary.ts';

const bearing = between(0, 360, 'a bearing in degrees, from 0 to 360 clockwise from the top edge');
const height = between(0, 90, 'a height in degrees, from 0 to 90 above the plate');
const seconds = amount('an exposure time in seconds above 0, such as 0.125');
const aperture = amount('an f-number above 0, such as 8');
const iso = amount('an ISO speed above 0, such as 100');
const place = z
  .number('a whole number from 0')
  .int('a whole number from 0')
  .min(0, 'a whole number from 0');
const point = z.tuple([z.number(), z.number()], 'a point [x, y] in pixels');

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
      index: between(1.1, 3, 'a refractive index, such as 1.52').optional(),
      thickness: millimetres.optional(),
      angle: between(0, 90, 'an angle in degrees, from 0 to 90').optional(),
    })
    .optional(),
  note: text.optional(),
});

const exposure = z.strictObject({
  seconds: seconds.optional(),
  aperture: aperture.optional(),
  iso: iso.optional(),
});

const frame = z.strictObject({
  file: captureFile,
  seconds: seconds.optional(),
  bearing: bearing.optional(),
  height: height.optional(),
  /** Place in a mosaic, from 0 at the top left. */
  row: place.optional(),
  column: place.optional(),
});

const capture = z
  .strictObject({
    id,
    /** One picture, or a set that makes one picture. */
    kind: z.enum(['single', 'bracket', 'lights', 'mosaic']).default('single'),
    file: captureFile.optional(),
    frames: z
      .array(frame)
      .min(2, 'at least two frames')
      .max(5000, 'at most 5000 frames')
      .optional(),
    /** Name of one of `setups`, or one of the kinds of set-up. */
    setup: text,
    reading: z.enum(readings),
    exposure: exposure.optional(),
    /** Glossy ball in the frame: centre and radius in pixels. */
    ball: z
      .strictObject({ x: z.number(), y: z.number(), radius: amount('a radius in pixels above 0') })
      .optional(),
    /** A ball whose circle is to be found: anywhere in the frame, or in [left, top, width, height]. */
    ballWithin: z
      .union(
        [z.literal('frame'), z.tuple([place, place, place, place])],
        '"frame", or a rectangle [left, top, width, height] in pixels',
      )
      .optional(),
    /** Part of each side that neighbouring frames of a mosaic share, 0 to 1. */
    overlap: between(0.01, 0.99, 'the shared part of each side, such as 0.3').optional(),
    /** Frame of an even white field under the same light. */
    blank: captureFile.optional(),
    target: z
      .strictObject({
        file: captureFile.optional(),
        kind: z.enum(['24-patch', 'slanted-edge', 'scale']),
        /** Corners in pixels, clockwise from the top left. */
        corners: z.tuple([point, point, point, point]).optional(),
        /** When a 24-patch target was made: its colours changed in November 2014. */
        edition: z.enum(['before-2014-11', 'from-2014-11']).optional(),
        /** Length of a scale from its first corner to its second, mm. */
        length: millimetres.optional(),
      })
      .optional(),
    /** Pairs of points, pixels in this capture and in the base, as a start for the alignment. */
    controlPoints: z
      .array(z.strictObject({ here: point, base: point }))
      .min(4, 'at least four pairs of points')
      .optional(),
    note: text.optional(),
  })
  .refine((c) => (c.kind === 'single' ? c.file !== undefined : c.frames !== undefined), {
    message: 'a "file" for a single capture, or "frames" for a bracket, lights or a mosaic',
  })
  .refine((c) => !(c.file !== undefined && c.frames !== undefined), {
    message: 'either "file" or "frames", not both',
  })
  .refine((c) => !(c.ball !== undefined && c.ballWithin !== undefined), {
    message: 'either "ball" or "ballWithin", not both',
  });

export const sittingSchema = z.strictObject({
  /** Day of the sitting. */
  date: z.iso.date('a day written as YYYY-MM-DD').optional(),
  /** A role or a name. */
  operator: text.optional(),
  camera: z
    .strictObject({
      make: text.optional(),
      model: text.optional(),
      lens: text.optional(),
      /** mm */
      focalLength: millimetres.optional(),
      aperture: aperture.optional(),
      iso: iso.optional(),
      /** From the lens to the plate, mm. */
      distance: millimetres.optional(),
    })
    .default({}),
  scale: z
    .strictObject({
      pixelsPerMillimetre: amount('pixels per millimetre, a number above 0'),
      /** Standard uncertainty of that figure, pixels per mm. */
      uncertainty: amount('an uncertainty in pixels per millimetre, above 0').optional(),
      from: z.enum(['target', 'plate-edges', 'stated']).default('stated'),
    })
    .optional(),
  /** Id of the capture that defines the plate's pixel frame; the first one where nothing is said. */
  base: id.optional(),
  setups: z.record(id, setup).default({}),
  captures: z.array(capture, 'a list of captures').min(1, 'at least one capture'),
});

export type SittingRecord = z.output<typeof sittingSchema>;
export type CaptureRecord = SittingRecord['captures'][number];
export type SetupRecord = SittingRecord['setups'][string];
export type LampRecord = SetupRecord['lamps'][number];

/** The set-up that a capture names; a bare kind stands for a set-up of that kind with nothing recorded. */
export function setupOf(sitting: SittingRecord, capture: CaptureRecord): SetupRecord | null {
  // A name such as "constructor" is on every object, but is no set-up.
  if (Object.hasOwn(sitting.setups, capture.setup)) return sitting.setups[capture.setup];
  const kind = setupKinds.find((k) => k === capture.setup);
  return kind ? { kind, lamps: [] } : null;
}
