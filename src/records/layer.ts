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
