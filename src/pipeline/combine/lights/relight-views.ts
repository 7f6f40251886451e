/** The views of a fitted many-light set: the surface itself, then its slope, relief and gloss. */
import { join } from 'node:path';
import { z } from 'zod';
import type { ChosenFit } from '../../../imaging/relight/choose-fit.ts';
import type { Figure, Setting } from '../../../records/result.ts';
import { keyOf } from '../../key.ts';
import type { PlannedView } from '../part.ts';
import * as words from './words.ts';

/** What is known of a fit: `result.json` beside the pictures that it made. */
export const lightsResult = z.strictObject({
  lamps: z.number(),
  planes: z.number(),
  domain: z.enum(['encoded', 'log', 'power']),
  terms: z.enum(['thin-plate', 'hemispherical']),
  free: z.boolean(),
  leftOutDecibels: z.number(),
  nearestDecibels: z.number(),
  keptDecibels: z.number(),
  spacingDegrees: z.number(),
  clippedShare: z.number(),
  /** `the sitting` or `the ball`. */
  directionsFrom: z.string(),
  /** Between sitting and ball, degrees. */
  disagreement: z.number().nullable(),
  /** The circle of the ball, where it was found and not given: pixels of the set's picture. */
  foundBall: z
    .strictObject({
      ...{ x: z.number(), y: z.number(), radius: z.number(), residual: z.number() },
      from: z.enum(['highlights', 'outline', 'both']),
    })
    .optional(),
  /** How steady the lamp was by its highlights on the ball, or why that is not told. */
  strength: z
    .union([
      z.strictObject({ spreadPercent: z.number(), clipped: z.number() }),
      z.strictObject({ reason: z.string() }),
    ])
    .optional(),
  /** Why it was not found. */
  ballFault: z.string().optional(),
  steepest: z.number(),
  exaggeration: z.number(),
  residualPercent: z.number(),
  /** Folders of the layers in the store. */
  layers: z.strictObject({ lamp: z.string(), slope: z.string() }),
});
export type LightsResult = z.output<typeof lightsResult>;

export function fitSummary(fit: ChosenFit) {
  const { weights, components, planes, free, leftOutDecibels, nearestDecibels } = fit;
  const { keptDecibels, spacingDegrees } = fit;
  return {
    ...{ lamps: weights.lamps, planes, domain: components.domain, terms: weights.kind, free },
    ...{ leftOutDecibels, nearestDecibels, keptDecibels, spacingDegrees },
  };
}

/** What was interpolated, as a setting says it. */
const domainWords: Record<LightsResult['domain'], string> = {
  encoded: 'display code',
  log: 'ln(code + 4)',
  power: '((code + 16) / 271)^1.45',
};

interface Made {
  readonly folder: string;
  readonly key: string;
  readonly result: LightsResult;
}

/** @param placed A view of the set's frames: the derived ones lie as it does. */
export function relightViews(
  placed: PlannedView,
  sources: readonly string[],
  { folder, key, result }: Made,
): PlannedView[] {
  const capture = placed.captures[0];
  const picture = (name: string) => ({
    path: join(folder, `${name}.tif`),
    sha256: keyOf({ key, picture: name }),
    // The frames were laid into the base frame before they were combined.
    warp: null,
    sources: [...sources],
    archive: [],
  });
  const shape = {
    ...placed,
    kind: 'derived' as const,
    reading: 'none' as const,
    step: words.shapeStep,
    layers: [{ name: 'slope' as const, folder: result.layers.slope }],
    figures: shapeFigures(result),
  };
  const falseLamp = [setting('exaggeration', result.exaggeration)];
  return [
    {
      ...placed,
      ...picture('relight'),
      id: capture,
      kind: 'relight',
      made: words.relightMade(result),
      caution: words.relightCaution,
      step: words.relightStep,
      settings: lampSettings(result),
      figures: lampFigures(result),
      layers: [
        { name: 'lamp', folder: result.layers.lamp },
        { name: 'slope', folder: result.layers.slope },
      ],
    },
    {
      ...{ ...shape, ...picture('slope'), id: `${capture}-slope`, settings: [] },
      ...{ made: words.slopeMade, caution: words.shapeCaution },
    },
    {
      ...{ ...shape, ...picture('relief'), id: `${capture}-relief`, settings: falseLamp },
      ...{ made: words.reliefMade(result.exaggeration), caution: words.shapeCaution },
    },
    {
      ...{ ...shape, ...picture('gloss'), id: `${capture}-gloss`, settings: [] },
      ...{ made: words.glossMade, caution: words.glossCaution },
    },
  ];
}

function setting(name: string, value: Setting['value']): Setting {
  return { name, value };
}

function figure(quantity: string, label: string, value: number, unit: string): Figure {
  return { quantity, label, value: Number(value.toPrecision(4)), unit };
}

function lampSettings(result: LightsResult): Setting[] {
  return [
    setting('interpolation', result.terms),
    setting('domain', domainWords[result.domain]),
    setting('planes', result.planes),
    setting('lamp directions from', result.directionsFrom),
    ...(result.strength ? [setting('lamp strength', strengthWords(result.strength))] : []),
    ...(result.foundBall ? [setting('circle of the ball', ballWords(result.foundBall))] : []),
  ];
}

function ballWords({ x, y, radius, from }: NonNullable<LightsResult['foundBall']>): string {
  const [left, top, size] = [x, y, radius].map((value) => value.toFixed(1));
  const by = from === 'both' ? 'highlights and outline' : from;
  return `found by its ${by}: x ${left}, y ${top}, radius ${size} pixels`;
}

function strengthWords(strength: NonNullable<LightsResult['strength']>): string {
  if ('reason' in strength) return `not told by the ball: ${strength.reason}`;
  const { clipped } = strength;
  return clipped === 0
    ? 'told by the ball, not corrected'
    : `told by the ball, not corrected; clipped in ${clipped} frames, which are left out`;
}

function lampFigures(result: LightsResult): Figure[] {
  return [
    figure('left-out-decibels', words.figures.leftOut, result.leftOutDecibels, 'dB'),
    figure('nearest-decibels', words.figures.nearest, result.nearestDecibels, 'dB'),
    figure('kept-decibels', words.figures.kept, result.keptDecibels, 'dB'),
    figure('lamp-spacing', words.figures.spacing, result.spacingDegrees, '°'),
    figure('planes', words.figures.planes, result.planes, ''),
    figure('clipped-share', words.figures.clipped, 100 * result.clippedShare, '%'),
    ...(result.strength && 'spreadPercent' in result.strength
      ? [figure('lamp-strength', words.figures.strength, result.strength.spreadPercent, '%')]
      : []),
    ...(result.foundBall
      ? [figure('ball-residual', words.figures.ball, result.foundBall.residual, 'pixels')]
      : []),
  ];
}

function shapeFigures(result: LightsResult): Figure[] {
  return [
    figure('shape-residual', words.figures.residual, result.residualPercent, '%'),
    figure('clipped-share', words.figures.clipped, 100 * result.clippedShare, '%'),
  ];
}
