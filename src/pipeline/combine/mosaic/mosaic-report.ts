/** What joining a mosaic found out, as the file that the store keeps. */
import { z } from 'zod';
import type { Assembly } from '../../../imaging/mosaic/assemble.ts';
import type { MosaicPlan } from '../../../imaging/mosaic/plan.ts';
import type { Survey } from '../../../imaging/mosaic/survey.ts';
import { residualMap } from '../../../imaging/registration/residual-map.ts';

export interface ReportTile {
  readonly file: string;
  readonly row: number;
  readonly column: number;
  readonly width: number;
  readonly height: number;
  readonly sha256: string;
}

/** A pair of tiles, by index, that does not agree. */
const apart = z.strictObject({ first: z.number(), second: z.number(), reason: z.string() });

export const mosaicReportSchema = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(false), apart: z.array(apart) }),
  z.strictObject({
    ok: z.literal(true),
    plan: z.custom<MosaicPlan>((value) => typeof value === 'object'),
    members: z.array(z.number()),
    apart: z.array(apart),
    lost: z.array(
      z.strictObject({
        tile: z.number(),
        place: z
          .strictObject({ row: z.number(), column: z.number(), beside: z.number() })
          .nullable(),
      }),
    ),
    model: z.enum(['similarity', 'homography']),
    tried: z.number(),
    agreed: z.number(),
    points: z.number(),
    /** Median over all points, and of the worst pair; pixels of the mosaic. */
    residual: z.number(),
    worstPair: z.number(),
    /** By region of the mosaic. */
    map: z.strictObject({
      columns: z.number(),
      rows: z.number(),
      pixels: z.array(z.number().nullable()),
    }),
    gains: z.array(z.number()),
    steps: z.strictObject({ median: z.number(), p95: z.number(), largest: z.number() }),
    covered: z.number(),
    hung: z.discriminatedUnion('ok', [
      z.strictObject({
        ok: z.literal(true),
        scale: z.number(),
        boundPixels: z.number(),
        pixelsPerMillimetre: z.number().nullable(),
      }),
      z.strictObject({ ok: z.literal(false), reason: z.string() }),
    ]),
  }),
]);
export type MosaicReport = z.output<typeof mosaicReportSchema>;

/** @param pixelsPerMillimetre Of the base. */
export function reportOf(
  survey: Survey,
  assembly: Assembly | null,
  pixelsPerMillimetre: number | null,
): MosaicReport {
  const apart = survey.pairs.flatMap(({ first, second, reason }) =>
    reason === null ? [] : { first, second, reason },
  );
  if (!assembly) return { ok: false, apart };
  const { plan, members, lost, placement, gains, steps, covered, hung } = assembly;
  const points = placement.points
    .filter(({ x, y }) => x >= 0 && y >= 0 && x < plan.width && y < plan.height)
    .map(({ x, y, distance }) => ({ x, y, dx: distance, dy: 0 }));
  const map = residualMap(points, plan);
  return {
    ok: true,
    plan,
    members: [...members],
    apart,
    lost: lost.map(({ tile, place }) => ({ tile, place: place && { ...place } })),
    model: placement.model,
    tried: survey.pairs.length,
    agreed: survey.pairs.length - apart.length,
    points: placement.points.length,
    residual: placement.median,
    worstPair: Math.max(...placement.pairs.map((p) => p.median)),
    map: { ...map, pixels: [...map.pixels] },
    gains: [...gains],
    steps: { median: steps.median, p95: steps.p95, largest: steps.largest },
    covered,
    hung: hung.ok
      ? {
          ok: true,
          scale: hung.scale,
          boundPixels: hung.registration.boundPixels,
          pixelsPerMillimetre: pixelsPerMillimetre && pixelsPerMillimetre * hung.scale,
        }
      : { ok: false, reason: hung.reason },
  };
}
