/** All measurements of one capture, from its files: doors to pixels on one side, numbers on the other. */
import { measureClipping } from '../../imaging/inspect/clipping.ts';
import { measuredStops } from '../../imaging/inspect/bracket-steps.ts';
import { detailAreas } from '../../imaging/inspect/detail-areas.ts';
import { measureEdgeBlur } from '../../imaging/inspect/edge-blur.ts';
import { findPlateEdges } from '../../imaging/inspect/plate-edges.ts';
import { scaleQuad, type Quad } from '../../imaging/inspect/quad.ts';
import { cutOut } from '../../imaging/inspect/samples.ts';
import type { Plane16 } from '../../imaging/plane.ts';
import { loadLuminance } from '../../raster/load-plane.ts';
import type { OpenOptions } from '../../raster/capture-rows.ts';
import type { FileResult } from '../../records/result.ts';
import type { CaptureRecord } from '../../records/sitting.ts';
import type { Measures } from './measures.ts';
import { measureBlank } from './measure-blank.ts';
import { measureColour, measureEdgeTarget } from './measure-target.ts';
import { readLuminanceAreas } from './read-areas.ts';

/** Longest side of the overview on which everything but sharpness is measured, pixels. */
export const overviewSide = 2000;
/** Longest side on which the plate's edges are searched. */
const edgeSide = 1000;
/** Side of a square in which sharpness is measured, full-resolution pixels, and how many. */
const detailSide = 320;
const detailCount = 10;
/** Linear value from which an overview pixel counts as clipped: 8-bit code 254 and above. */
export const clipLevel = Math.round(0.9911 * 65535);

export interface CaptureFiles {
  readonly record: CaptureRecord;
  /** The frames in the order of the sitting. */
  readonly frames: readonly FileResult[];
  /** Blank field and target, where they were read. */
  readonly blank: FileResult | null;
  readonly target: FileResult | null;
  readonly pathOf: (name: string) => string;
}

/** The frame that speaks for a capture: the shortest exposure of a bracket, the middle of a set. */
export function speakingFrame({ record, frames }: CaptureFiles): FileResult {
  if (record.kind !== 'bracket') return frames[frames.length >> 1];
  return frames.reduce((a, b) => (b.meanLuminance < a.meanLuminance ? b : a));
}

export async function measureCapture(files: CaptureFiles, open: OpenOptions): Promise<Measures> {
  const { record, frames } = files;
  const frame = speakingFrame(files);
  const path = files.pathOf(frame.name);
  const overview = await loadLuminance(path, { ...open, maxSide: overviewSide });
  const factor = frame.width / overview.width;
  const middle = frames[frames.length >> 1];
  // The darkest frame of a bracket shows glints; edges and detail are clearest in the middle one.
  const view =
    middle === frame
      ? overview
      : await loadLuminance(files.pathOf(middle.name), { ...open, maxSide: overviewSide });
  const outline = record.kind === 'mosaic' ? aPart : outlineOn(view);
  const quad = outline.ok ? outline.value.quad : null;
  const { imageShare, edgeShare, map } = measureClipping(overview, quad, clipLevel);
  return {
    file: frame.name,
    width: frame.width,
    height: frame.height,
    outline: outline.ok
      ? {
          ok: true,
          value: {
            corners: scaleQuad(outline.value.quad, factor).corners.map(([x, y]) => [x, y]),
            uncertainty: outline.value.uncertainty * factor,
          },
        }
      : outline,
    clipping: { imageShare, edgeShare, map: { ...map, values: [...map.values] } },
    blur: await measureBlur(view, quad, files.pathOf(middle.name), middle, open),
    blank: record.blank === undefined ? null : await measureBlank(files, open),
    edge: record.target?.kind === 'slanted-edge' ? await measureEdgeTarget(files, open) : null,
    colour: record.target?.kind === '24-patch' ? await measureColour(files, open) : null,
    steps: record.kind === 'bracket' ? await measureSteps(files, open) : [],
  };
}

const aPart = { ok: false, reason: 'a frame of a mosaic shows a part of the plate' } as const;

function outlineOn(
  overview: Plane16,
):
  | { readonly ok: true; readonly value: { readonly quad: Quad; readonly uncertainty: number } }
  | { readonly ok: false; readonly reason: string } {
  const small = shrink(overview, edgeSide);
  const found = findPlateEdges(small);
  if (!found.ok) return found;
  const factor = overview.width / small.width;
  return {
    ok: true,
    value: {
      quad: scaleQuad(found.value.outline, factor),
      uncertainty: found.value.uncertaintyPixels * factor,
    },
  };
}

/** Means of whole blocks of an overview, so that its longest side is at most `maxSide`. */
function shrink(plane: Plane16, maxSide: number): Plane16 {
  const step = Math.ceil(Math.max(plane.width, plane.height) / maxSide);
  if (step === 1) return plane;
  const width = Math.floor(plane.width / step);
  const height = Math.floor(plane.height / step);
  const data = new Uint16Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      for (let j = 0; j < step; j += 1) {
        for (let i = 0; i < step; i += 1) {
          sum += plane.data[(y * step + j) * plane.width + x * step + i];
        }
      }
      data[y * width + x] = sum / step ** 2 + 0.5;
    }
  }
  return { width, height, data };
}

async function measureBlur(
  overview: Plane16,
  outline: Quad | null,
  path: string,
  frame: FileResult,
  open: OpenOptions,
): Promise<Measures['blur']> {
  const factor = frame.width / overview.width;
  // Small pictures are cut smaller, so that several squares find place inside the edges.
  const room = (outline?.shorterSide ?? Math.min(overview.width, overview.height)) / 5;
  const side = Math.max(16, Math.floor(Math.min(detailSide / factor, room)));
  const areas = detailAreas(overview, outline, clipLevel, side, detailCount);
  if (areas.length === 0) return { ok: false, reason: 'no part of the plate has detail' };
  if (factor === 1) return measureEdgeBlur(areas.map((area) => cutOut(overview, area)));
  const full = areas.map((area) => {
    const width = Math.min(Math.round(area.width * factor), frame.width);
    const height = Math.min(Math.round(area.height * factor), frame.height);
    const x = Math.min(frame.width - width, Math.round(area.x * factor));
    const y = Math.min(frame.height - height, Math.round(area.y * factor));
    return { x, y, width, height };
  });
  return measureEdgeBlur(await readLuminanceAreas(path, full, open));
}

/** Stops from each frame to the next in the sitting's order, on overviews of 400 pixels. */
async function measureSteps(
  { frames, pathOf }: CaptureFiles,
  open: OpenOptions,
): Promise<(number | null)[]> {
  const steps: (number | null)[] = [];
  let before: Plane16 | null = null;
  for (const { name } of frames) {
    const plane: Plane16 = await loadLuminance(pathOf(name), { ...open, maxSide: 400 });
    if (before) {
      const stops = measuredStops(before.data, plane.data);
      steps.push(Number.isNaN(stops) ? null : stops);
    }
    before = plane;
  }
  return steps;
}
