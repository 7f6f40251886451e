/**
 * `layer.json`: what the viewer needs to know of a set of data planes that lies over a view.
 *
 * A layer is K planes of 8-bit numbers over the plate's frame. They are data, not a picture: a
 * tile holds its K planes under one another in one grey image, so that one request brings all
 * of them and no colour step mixes them; a level is made by plain averaging of the one below.
 * Addresses are `<level>/<column>-<row>.<format>`; level 0 has the full size, level n the size
 * divided by 2^n and rounded up, and the last level fits one tile.
 */
import { z } from 'zod';

export const layerKinds = ['gain', 'lamp', 'slope'] as const;
export type LayerKind = (typeof layerKinds)[number];

/** What every layer says; each kind adds its own numbers. */
export const layerShape = {
  version: z.literal(1),
  /** Of level 0, pixels. */
  width: z.number().int().positive(),
  height: z.number().int().positive(),
  /** Side of a tile, pixels of its level; tiles at the right and bottom are smaller. */
  tile: z.number().int().positive(),
  /** Planes in each tile, from the top. */
  planes: z.number().int().positive(),
  /** WebP, or PNG where a plane must be exact. */
  format: z.enum(['webp', 'png']),
  /** Number of levels. */
  levels: z.number().int().positive(),
  /** What a plane's code c stands for: `offset + step * c`, one pair for each plane. */
  offset: z.array(z.number()),
  step: z.array(z.number()),
};

/**
 * A gain layer over a merged bracket: what turns the rendering that a view shows back into the
 * wide range that the bracket holds. Its three planes:
 *
 * 0. gain: the code's value `offset + step * c` is a number of stops G. With B the view's own
 *    linear light (tile decoded through the sRGB curve, 0 to 1, each channel) and the weight W
 *    between 0 (the rendering as it is) and 1 (the merged light):
 *    `light = (B + offsetBase) * 2^(G * W) - offsetMerged`. Light 1 is what the frame of 0 stops
 *    shows as its largest code.
 * 1. share of the pixel that is clipped in every frame, 0 to 1: the light is a lower bound.
 * 2. share of the pixel that no frame lifts above its noise, 0 to 1: the light is not known.
 *
 * What one exposure of the bracket would have shown is `min(clip, light * 2^stops)`.
 *
 * References
 * - ISO 21496-1:2025, gain map metadata for image conversion: the arithmetic, with encoding
 *   exponent 1 (clause numbers not seen).
 */
export const gainLayerSchema = z.strictObject({
  ...layerShape,
  kind: z.literal('gain'),
  gain: z.strictObject({
    /** Of the codes of plane 0, stops: the same as `offset[0]` and `offset[0] + 255 * step[0]`. */
    min: z.number(),
    max: z.number(),
    /** Added to the view's light before the gain. */
    offsetBase: z.number(),
    /** Subtracted from the light after the gain. */
    offsetMerged: z.number(),
    /** Stops from light 1 up to the brightest light that the bracket holds; W = 1 shows it all. */
    headroom: z.number(),
    /** Stops from light 1 down to the darkest light that stands above the noise. */
    footroom: z.number(),
  }),
  /** As they were taken, shortest exposure first. */
  frames: z
    .array(
      z.strictObject({
        /** View that shows the frame. */
        view: z.string(),
        /** As marked. */
        seconds: z.number().positive(),
        /** What the merged light is multiplied by, as a power of two, to look like this frame. */
        stops: z.number(),
        /** Linear light, 0 to 1 of the largest code, at which the frame clips. */
        clip: z.number().positive(),
        /** Linear light, 0 to 1, that equals the frame's noise in the dark. */
        floor: z.number().nonnegative(),
      }),
    )
    .min(2),
});
export type GainLayer = z.output<typeof gainLayerSchema>;

const unit = z.tuple([z.number(), z.number(), z.number()]);

/**
 * `lamp`: what the plate looks like under a lamp at any place. Each channel of a pixel is
 * `base + sum of factor * plane`, where base and factors depend on the lamp's direction alone:
 * `src/imaging/relight/lamp-light.ts` works them out and evaluates a pixel.
 */
export const lampLayerSchema = z.strictObject({
  ...layerShape,
  kind: z.literal('lamp'),
  /** What the sum is: a display code v, 0 to 255 on the sRGB curve, ln(v + 4), or 255 ((v + 16) / 271)^1.45. */
  domain: z.enum(['encoded', 'log', 'power']),
  /** Functions of the direction that base and factors are made of (`lamp-terms.ts`). */
  terms: z.enum(['thin-plate', 'hemispherical']),
  /** The captured lamps, in the order of the frames. */
  lamps: z
    .array(
      z.strictObject({
        /** Degrees, as in `src/imaging/conventions.ts`. */
        bearing: z.number(),
        height: z.number(),
        /** The same as a unit vector from the plate's centre: x right, y up, z to the camera. */
        direction: unit,
        /** View that shows the frame as it was taken, where it is published. */
        view: z.string().nullable(),
        /** Share of this frame's pixels that were clipped, 0 to 1. */
        clippedShare: z.number(),
      }),
    )
    .min(3),
  /**
   * Row-major, 3 * (planes + 1) rows, one column for each term. Rows of a channel: its base,
   * then its factor of each plane; red, green, blue.
   */
  response: z.array(z.number()),
  /** Lamps round the outside, anticlockwise; a direction beyond them is moved to the edge. */
  hull: z.array(z.number().int().nonnegative()).min(3),
  /** Whether lamps between the captured ones are worth showing; otherwise only those are. */
  free: z.boolean(),
  /** Peak signal to noise ratio of a frame foretold from the others, dB, in display codes. */
  leftOutDecibels: z.number(),
  /** The same when the nearest other frame stands in. */
  nearestDecibels: z.number(),
  /** Median distance of a lamp to its nearest neighbour, degrees. */
  spacingDegrees: z.number(),
  /** Share of the pixels that were clipped in at least one frame, 0 to 1. */
  clippedShare: z.number(),
});
export type LampLayer = z.output<typeof lampLayerSchema>;

/**
 * `slope`: the shape of the surface and its gloss, for pictures of it under a false lamp.
 * Slopes are rise per run towards the right and *upwards*: the normal is (-sx, -sy, 1) over its
 * length. Gloss is what the brightest lamps add to the diffuse part, 0 to 1 on the sRGB curve.
 * Clipped is the share of the frames in which the pixel was clipped, 0 to 1.
 */
export const slopeLayerSchema = z.strictObject({
  ...layerShape,
  kind: z.literal('slope'),
  /** What the planes hold, from the top. */
  holds: z.tuple([
    z.literal('slope-x'),
    z.literal('slope-y'),
    z.literal('gloss'),
    z.literal('clipped'),
  ]),
  /** Largest slope that the codes can hold; steeper ones are cut off there. */
  steepest: z.number(),
  /** Median over the pixels of what the diffuse fit leaves unexplained, per cent of its light. */
  residualPercent: z.number(),
});
export type SlopeLayer = z.output<typeof slopeLayerSchema>;
