/**
 * Hand colouring as a view and an area, on plates whose record speaks of it: where what the plate
 * scatters under a side lamp has another colour than what it mirrors of an even field.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { beyondTarnish } from '../../imaging/hand-colouring/beyond-tarnish.ts';
import { colouredArea } from '../../imaging/hand-colouring/coloured-area.ts';
import { drawColouring } from '../../imaging/hand-colouring/draw-colouring.ts';
import { enlargement } from '../../imaging/registration/homography.ts';
import { smallColours } from '../../raster/small-colours.ts';
import { writePicture } from '../../raster/write-picture.ts';
import { finding, type Finding } from '../../records/finding.ts';
import type { Figure } from '../../records/result.ts';
import type { AlignedPlate } from '../align.ts';
import { keyOf } from '../key.ts';
import { plateScale } from '../plate-scale.ts';
import type { StageContext } from '../stage-context.ts';
import { keepFolder, readJson } from '../store.ts';
import { colouringWords as words } from './hand-colouring-words.ts';
import type { PlannedView, PlateMaker } from './part.ts';

/** Raised when the same captures would give another picture or area. */
const colouringVersion = 1;
/** Pixel of the derived picture, mm; where the scale is not known, pixels on its longer side. */
const pitch = 0.14;
const unscaledSide = 800;
/** Longer side of a plate whose scale is not known, mm: only distances follow from it, no figure. */
const assumedSide = 110;
/** Distance over which tarnish is taken to be even where the mirror is hidden, mm. Own choice. */
const evenOver = 3;
/** Sure colour in patches smaller than this is not believed, mm². Own choice. */
const speck = 1;

const keptSchema = z.union([
  z.strictObject({
    width: z.number(),
    height: z.number(),
    /** Pixels. */
    least: z.number(),
    most: z.number(),
    notJudged: z.number(),
    threshold: z.number(),
  }),
  z.strictObject({ reason: z.string() }),
]);
type Kept = Exclude<z.output<typeof keptSchema>, { reason: string }>;

export const handColouringViews: PlateMaker = async (aligned, views, context) => {
  const { record, sittings } = aligned.plate;
  if (!record.handColouring) return { views: [], findings: [] };
  const whole = views.filter((view) => view.width === aligned.frame.width);
  const pair = colouringPair(whole);
  if (!pair) return { views: [], findings: [refused(aligned, words.noPair)] };
  const scale = plateScale(record, sittings[0].record, aligned.scale).pixelsPerMillimetre;
  const { width, height } = pair[0];
  const longer = Math.max(width, height);
  const factor = Math.max(1, Math.round(scale === null ? longer / unscaledSide : scale * pitch));
  const perMillimetre = (scale ?? longer / assumedSide) / factor;
  const { folder, key, kept } = await colouringOf(aligned, pair, factor, perMillimetre, context);
  if ('reason' in kept) return { views: [], findings: [refused(aligned, kept.reason)] };
  const size = Array.isArray(record.size) ? record.size : null;
  const view: PlannedView = {
    ...{ id: 'hand-colouring', sitting: pair[0].sitting, kind: 'derived', setupKind: 'normal' },
    captures: pair.flatMap((one) => one.captures),
    sources: pair.map((one) => one.sha256),
    ...{ reading: 'none', width, height, registered: true },
    // Enlarged to the frame again, so that it lies on the other views exactly.
    warp: enlargement(factor),
    path: join(folder, 'hand-colouring.tif'),
    sha256: keyOf({ key, picture: 'hand-colouring' }),
    ...{ made: words.made, caution: words.caution, step: words.step },
    settings: [
      { name: words.settings.difference, value: kept.threshold },
      { name: words.settings.pixel, value: factor },
    ],
    figures: figuresOf(kept, scale === null ? null : scale / factor, size),
    ...{ layers: [], archive: [] },
  };
  return { views: [view], findings: [] };
};

/** The first positive under a side lamp that has a negative in an even field beside it. */
function colouringPair(views: readonly PlannedView[]): [PlannedView, PlannedView] | null {
  const usable = views.filter((view) => view.kind === 'capture' && view.registered);
  for (const positive of usable) {
    if (positive.setupKind !== 'normal' || positive.reading !== 'positive') continue;
    const negative = usable.find(
      ({ sitting, setupKind, reading }) =>
        sitting === positive.sitting && setupKind === 'axial' && reading === 'negative',
    );
    if (negative) return [positive, negative];
  }
  return null;
}

async function colouringOf(
  aligned: AlignedPlate,
  pair: readonly PlannedView[],
  factor: number,
  perMillimetre: number,
  context: StageContext,
) {
  const { width, height } = pair[0];
  const parts = pair.map(({ sha256, warp, radial }) => ({
    ...{ sha256, warp, radial: radial ? { ...radial } : null },
  }));
  const key = keyOf({ colouringVersion, parts, width, height, factor, perMillimetre });
  const make = async (draft: string): Promise<void> => {
    context.progress(`${aligned.plate.slug}: hand colouring`);
    const files = pair.map(({ path, warp, radial }) => ({
      ...{ path, gain: 1, homography: warp, radial: radial ?? null },
    }));
    const frame = { width, height };
    const options = { frame, scratch: context.store.scratch };
    const [scattered, mirrored] = await smallColours(files, factor, options);
    const found = beyondTarnish(scattered, mirrored, Math.round(evenOver * perMillimetre));
    const write = (result: z.input<typeof keptSchema>) =>
      writeFile(join(draft, 'result.json'), JSON.stringify(result));
    if (!found.ok) return write({ reason: found.reason });
    const area = colouredArea(found.value.classes, scattered.width, speck * perMillimetre ** 2);
    await writePicture(join(draft, 'hand-colouring.tif'), {
      ...{ width: scattered.width, height: scattered.height, channels: 3, depth: 16 },
      ...{ data: drawColouring(scattered, area.classes), profile: 'srgb', format: 'tiff' },
    });
    const { least, most, notJudged } = area;
    const { threshold } = found.value;
    const size = { width: scattered.width, height: scattered.height };
    await write({ ...size, least, most, notJudged, threshold });
  };
  const folder = await keepFolder(context.store, 'combine', key, make, context.tally);
  const read = await readJson(join(folder, 'result.json'), (value) => keptSchema.parse(value));
  if (!read.ok) throw new Error(`${folder} holds no result that can be read.`);
  return { folder, key, kept: read.value };
}

/** @param scale Pixels of the derived picture per mm; without one there is no area. */
function figuresOf(
  { width, height, least, most, notJudged }: Kept,
  scale: number | null,
  size: readonly number[] | null,
): Figure[] {
  const label = words.figures;
  const figure = (quantity: string, text: string, value: number, unit: string): Figure => ({
    ...{ quantity, label: text, value: Number(value.toPrecision(3)), unit },
  });
  const figures: Figure[] = [];
  if (scale !== null) {
    const [low, high] = [least / scale ** 2, most / scale ** 2];
    const [middle, spread] = [(low + high) / 2, (high - low) / 2];
    const plate = size ? size[0] * size[1] : null;
    if (low === 0) figures.push(figure('area-most', label.most, high, 'mm²'));
    else {
      figures.push(figure('area', label.area, middle, 'mm²'));
      figures.push(figure('area-uncertainty', label.uncertainty, spread, 'mm²'));
      if (plate !== null) {
        figures.push(figure('area-share', label.share, (100 * middle) / plate, '%'));
        const doubt = (100 * spread) / plate;
        figures.push(figure('area-share-uncertainty', label.shareUncertainty, doubt, '%'));
      }
    }
  }
  const unknown = (100 * notJudged) / (width * height);
  return [...figures, figure('not-judged', label.notJudged, unknown, '%')];
}

function refused(aligned: AlignedPlate, reason: string): Finding {
  return finding({
    ...{ level: 'note', plate: aligned.plate.slug, code: 'hand-colouring-not-told' },
    message: words.refused(reason),
    remedy: words.remedy,
  });
}
