/**
 * What the stages found out about one plate: the file `record.json` that the pages read.
 * Written by `src/pipeline`, read by everyone else. All lengths of pictures are pixels.
 */
import { z } from 'zod';
import { findingSchema } from './finding.ts';
import { inspectionSchema } from './inspection.ts';
import { layerKinds } from './layer.ts';
import { pairSchema } from './pair-result.ts';
import { digest, size } from './result-parts.ts';
import { readings, setupKinds } from './vocabulary.ts';

/** Raised when the shape below changes, so that an old result is made again. */
export const resultVersion = 5;

const exif = z.strictObject({
  make: z.string().nullable(),
  model: z.string().nullable(),
  lens: z.string().nullable(),
  focalLength: z.number().nullable(),
  aperture: z.number().nullable(),
  iso: z.number().nullable(),
  seconds: z.number().nullable(),
  /** Local time as the camera wrote it, `YYYY-MM-DDTHH:MM:SS`. */
  taken: z.string().nullable(),
});
export type CameraExif = z.output<typeof exif>;

export const fileSchema = z.strictObject({
  /** Relative to the plate's `captures/` folder. */
  name: z.string(),
  sha256: digest,
  bytes: z.number().int().positive(),
  format: z.enum(['tiff', 'jpeg', 'png', 'webp']),
  width: z.number().int().positive(),
  height: z.number().int().positive(),
  channels: z.number().int().positive(),
  depth: z.union([z.literal(8), z.literal(16)]),
  /** Name of the embedded colour profile; null means none, and sRGB was assumed. */
  profile: z.string().nullable(),
  exif,
  /** Mean luminance over all pixels, linear, 0 to 1. */
  meanLuminance: z.number(),
  /** Share of pixels with a channel at its largest code, 0 to 1. */
  clippedShare: z.number(),
});
export type FileResult = z.output<typeof fileSchema>;

/** Row-major over a picture; null where nothing could tell. */
const residualGrid = z.strictObject({
  columns: z.number().int(),
  rows: z.number().int(),
  pixels: z.array(z.number().nullable()),
});
export type ResidualGridResult = z.output<typeof residualGrid>;

/** The difference between two lenses: p becomes centre + (p - centre) (1 + coefficient r² / radius²). */
const radial = z.strictObject({
  coefficient: z.number(),
  /** Pixels of the base frame. */
  centre: z.tuple([z.number(), z.number()]),
  /** Half the diagonal of the base frame, pixels. */
  radius: z.number(),
});

export const registrationSchema = z.discriminatedUnion('state', [
  z.strictObject({ state: z.literal('base') }),
  z.strictObject({
    state: z.literal('registered'),
    /** Takes a pixel of the capture to the base frame; row-major 3 x 3. */
    homography: z.array(z.number()).length(9),
    /**
     * Where focus or lens changed between the captures: a pixel of the base frame is moved by
     * this before the inverse homography takes it to the capture. Null for the same lens.
     */
    radial: radial.nullable(),
    /** Upper bound of the error: twice the predicted corner deviation, base pixels. */
    boundPixels: z.number(),
    boundMicrometres: z.number().nullable(),
    /** How the file lay: `as-is`, `mirrored`, `half-turned` or `mirrored and half-turned`. */
    lay: z.enum(['as-is', 'mirrored', 'half-turned', 'mirrored and half-turned']),
    /** `opposite` tones, as a positive and a negative have, or the `same`. */
    polarity: z.enum(['same', 'opposite', 'unclear']),
    method: z.string(),
    tilesAgreed: z.number().int(),
    tilesTried: z.number().int(),
    /** Residual by region of the base frame, row-major grid; null where no tile could tell. */
    residual: residualGrid,
  }),
  z.strictObject({ state: z.literal('failed'), reason: z.string() }),
  z.strictObject({ state: z.literal('not-measured'), reason: z.string() }),
]);
export type Registration = z.output<typeof registrationSchema>;

const capture = z.strictObject({
  id: z.string(),
  kind: z.enum(['single', 'bracket', 'lights', 'mosaic']),
  setup: z.string(),
  setupKind: z.enum(setupKinds),
  reading: z.enum(readings),
  files: z.array(fileSchema),
  registration: registrationSchema,
  /** Null where no frame could be measured. */
  inspection: inspectionSchema.nullable(),
});

/** One number that says how well a derived picture was made, for the page and the record. */
const figure = z.strictObject({
  /** Stable word for programs. */
  quantity: z.string(),
  label: z.string(),
  value: z.number(),
  unit: z.string(),
});
export type Figure = z.output<typeof figure>;

/** A choice that a step was made with. */
const setting = z.strictObject({
  name: z.string(),
  value: z.union([z.string(), z.number(), z.boolean()]),
});
export type Setting = z.output<typeof setting>;

/** Data planes over a view, for the viewer: see `layer.ts`. */
const layer = z.strictObject({
  /** Last part of the address: `plates/<slug>/views/<view>/<name>/`. */
  name: z.enum(layerKinds),
  /** Folder in the store; also the digest of everything that made it. */
  folder: digest,
});
export type LayerResult = z.output<typeof layer>;

/** A file of a derived picture that the archive keeps and the site does not publish. */
const archived = z.strictObject({
  name: z.string(),
  /** Folder in the store under `combine/`. */
  folder: digest,
  sha256: digest,
  bytes: z.number().int().positive(),
  mediaType: z.string(),
  /** What it is: `32-bit float TIFF, linear, relative radiance`. */
  label: z.string(),
});
export type ArchivedFile = z.output<typeof archived>;

const view = z.strictObject({
  id: z.string(),
  /** Which sitting it belongs to. */
  sitting: z.string(),
  /** Captures it was made from. */
  captures: z.array(z.string()).min(1),
  /** SHA-256 of the capture files it was made from. */
  sources: z.array(digest).min(1),
  kind: z.enum(['capture', 'merge', 'relight', 'mosaic', 'derived']),
  setupKind: z.enum(setupKinds),
  reading: z.enum(readings),
  /** Size of the picture that was tiled. */
  ...size.shape,
  /** True when the picture lies in the base frame, in register with the others that do. */
  registered: z.boolean(),
  /** Folder of tiles in the store; also the digest of everything that made them. */
  tiles: digest,
  /** Whole pictures that exist, `full/w,h/0/default.jpg`, smallest first. */
  sizes: z.array(size).min(1),
  /** How the picture was made, a sentence for the reader. */
  made: z.string(),
  /** What it must not be used for, where there is something to say. */
  caution: z.string().nullable(),
  /** The step as a phrase, `merging a bracket`; null for a capture as it was taken. */
  step: z.string().nullable(),
  settings: z.array(setting),
  figures: z.array(figure),
  layers: z.array(layer),
  archive: z.array(archived),
  /** What joining left over, by region of the view; pixels of the view. */
  residual: residualGrid.optional(),
});
export type ViewResult = z.output<typeof view>;

const sitting = z.strictObject({
  /** `sitting`, or the date that names the file under `sittings/`. */
  id: z.string(),
  date: z.string().nullable(),
  /** The capture that defines the frame; null where it is withheld, and so not named. */
  base: z.string().nullable(),
  camera: exif.omit({ seconds: true, taken: true }).extend({ distance: z.number().nullable() }),
  captures: z.array(capture),
});

export const resultSchema = z.strictObject({
  version: z.literal(resultVersion),
  slug: z.string(),
  /** Digest of everything that the result depends on. */
  key: digest,
  sittings: z.array(sitting).min(1),
  /** The plate's own frame: the base capture of the first sitting. */
  frame: z.strictObject({
    ...size.shape,
    pixelsPerMillimetre: z.number().nullable(),
    /** Standard uncertainty of that figure. */
    scaleUncertainty: z.number().nullable(),
    /** Where the scale comes from, in words. */
    scaleFrom: z.string(),
  }),
  views: z.array(view),
  pair: pairSchema.nullable(),
  findings: z.array(findingSchema),
});
export type PlateResult = z.output<typeof resultSchema>;
export type CaptureResult = z.output<typeof capture>;
export type SittingResult = z.output<typeof sitting>;
