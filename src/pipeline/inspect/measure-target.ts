/** Targets in the frame or in a frame of their own, found by the corners that the sitting gives. */
import { quadOf, type Point, type Quad } from '../../imaging/inspect/quad.ts';
import type { Area } from '../../imaging/inspect/samples.ts';
import { measureSlantedEdge } from '../../imaging/inspect/slanted-edge.ts';
import { bestCornerOrder, measureTarget } from '../../imaging/inspect/target-colour.ts';
import type { OpenOptions } from '../../raster/capture-rows.ts';
import type { FileResult } from '../../records/result.ts';
import type { Measures } from './measures.ts';
import { speakingFrame, type CaptureFiles } from './measure-capture.ts';
import { readColourArea, readLuminanceAreas } from './read-areas.ts';

/** More pixels than this are a picture, not a target: memory stays bounded. */
const mostPixels = 12_000_000;

type Placed =
  | { readonly ok: true; readonly file: FileResult; readonly area: Area; readonly quad: Quad }
  | { readonly ok: false; readonly reason: string };

/** The file that shows the target, the area around it, and its corners within that area. */
function placeTarget(files: CaptureFiles): Placed {
  const { target } = files.record;
  const file = target?.file === undefined ? speakingFrame(files) : files.target;
  if (!file) return { ok: false, reason: 'its file could not be read' };
  if (!target?.corners) return { ok: false, reason: 'the sitting gives no corners for it' };
  const xs = target.corners.map(([x]) => x);
  const ys = target.corners.map(([, y]) => y);
  const [x, y] = [Math.floor(Math.min(...xs)), Math.floor(Math.min(...ys))];
  const [right, bottom] = [Math.ceil(Math.max(...xs)), Math.ceil(Math.max(...ys))];
  if (x < 0 || y < 0 || right >= file.width || bottom >= file.height) {
    return {
      ok: false,
      reason: `its corners lie outside ${file.name}, which has ${file.width} × ${file.height} pixels`,
    };
  }
  const area = { x, y, width: right - x + 1, height: bottom - y + 1 };
  if (area.width * area.height > mostPixels) {
    return { ok: false, reason: 'its corners enclose more than 12 megapixels' };
  }
  const [a, b, c, d] = target.corners.map(([px, py]): Point => [px - x, py - y]);
  return { ok: true, file, area, quad: quadOf([a, b, c, d]) };
}

export async function measureColour(
  files: CaptureFiles,
  open: OpenOptions,
): Promise<NonNullable<Measures['colour']>> {
  const placed = placeTarget(files);
  if (!placed.ok) return placed;
  const planes = await readColourArea(files.pathOf(placed.file.name), placed.area, open);
  const edition = files.record.target?.edition ?? 'from-2014-11';
  const other = edition === 'from-2014-11' ? 'before-2014-11' : 'from-2014-11';
  const { mean, max, worstPatch, tone, whiteBalance, noise } = measureTarget(
    planes,
    placed.quad,
    edition,
  );
  if (!Number.isFinite(mean)) return { ok: false, reason: 'its corners enclose too few pixels' };
  const value = { edition, mean, max, worstPatch, tone, whiteBalance, noise };
  return {
    ok: true,
    value: {
      ...value,
      otherEdition: measureTarget(planes, placed.quad, other).mean,
      bestOrder: { ...bestCornerOrder(planes, placed.quad, edition) },
    },
  };
}

export async function measureEdgeTarget(
  files: CaptureFiles,
  open: OpenOptions,
): Promise<NonNullable<Measures['edge']>> {
  const placed = placeTarget(files);
  if (!placed.ok) return placed;
  const path = files.pathOf(placed.file.name);
  const [plane] = await readLuminanceAreas(path, [placed.area], open);
  const found = measureSlantedEdge(plane);
  if (!found.ok) return found;
  const { mtf50, mtf10, atHalfSampling, maximum } = found.value;
  const known = (frequency: number): number | null => (Number.isNaN(frequency) ? null : frequency);
  return {
    ok: true,
    value: { mtf50: known(mtf50), mtf10: known(mtf10), atHalfSampling, maximum },
  };
}
