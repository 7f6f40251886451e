/** The turning point of a plate's pair, from small planes of both pictures in the plate's frame. */
import { z } from 'zod';
import { project, type Homography } from '../../imaging/conventions.ts';
import { invert3 } from '../../imaging/colour/matrix3.ts';
import type { Plane, Plane16 } from '../../imaging/plane.ts';
import { bend } from '../../imaging/radial.ts';
import { plateTurning, type Region } from '../../imaging/turning-map.ts';
import { defaultPixelLimit, readHead } from '../../raster/capture-head.ts';
import { loadLuminance } from '../../raster/load-plane.ts';
import type { PairTurn } from '../../records/pair-result.ts';
import { baseCapture, type AlignedPlate } from '../align.ts';
import { keyOf } from '../key.ts';
import type { StageContext } from '../stage-context.ts';
import { keepJson } from '../store.ts';
import type { PlannedView } from './part.ts';

export interface Pair {
  readonly positive: string;
  readonly negative: string;
}

const version = 1;
/** Longest side of the planes: a field of the map then has well over a thousand samples. */
const side = 480;

/** Null where one of the two is not a view. */
export async function pairTurn(
  plate: AlignedPlate,
  views: readonly PlannedView[],
  pair: Pair,
  context: StageContext,
): Promise<PairTurn | null> {
  const both = [pair.positive, pair.negative].flatMap(
    (id) => views.find((view) => view.id === id) ?? [],
  );
  if (both.length < 2) return null;
  const key = keyOf({
    ...{ version, step: 'turn', frame: { ...plate.frame } },
    views: both.map(({ sha256, warp, radial }) => ({
      ...{ sha256, warp, radial: radial ? { ...radial } : null },
    })),
    region: { ...(plateRegion(plate, 1) ?? {}) },
  });
  return keepJson(
    context.store,
    'turn',
    key,
    (value) => z.custom<PairTurn>((v) => typeof v === 'object' && v !== null).parse(value),
    async () => {
      const [positive, negative] = await Promise.all(
        both.map((view) => framePlane(view, plate.frame, context)),
      );
      const region = plateRegion(plate, positive.width / plate.frame.width);
      const { value, reason, map, lower, upper, reversing } = plateTurning(
        positive,
        negative,
        region ? { region } : {},
      );
      const short = (v: number | null) => (v === null ? null : Number(v.toPrecision(4)));
      return {
        ...{ value: short(value), reason, reversing: short(reversing) },
        ...{ lower: short(lower), upper: short(upper) },
        map: { ...map, values: map.values.map(short) },
      };
    },
    context.tally,
  );
}

/** The plate itself inside the frame, as inspection found its edges, less a tenth at each side. */
function plateRegion(plate: AlignedPlate, scale: number): Region | null {
  const [first] = plate.plate.sittings;
  const found = plate.inspections.get(`${first.id}/${baseCapture(first).id}`)?.outline;
  if (!found) return null;
  const { width, height } = plate.frame;
  const xs = found.map(([x]) => x * width * scale);
  const ys = found.map(([, y]) => y * height * scale);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [w, h] = [Math.max(...xs) - left, Math.max(...ys) - top];
  return { x: left + 0.1 * w, y: top + 0.1 * h, width: 0.8 * w, height: 0.8 * h };
}

/** A view's linear luminance, 0 to 1, shrunk and laid into the plate's frame; black where it does not reach. */
async function framePlane(
  view: PlannedView,
  frame: { readonly width: number; readonly height: number },
  context: StageContext,
): Promise<Plane> {
  const small = await loadLuminance(view.path, {
    ...{ maxSide: side, scratch: context.store.scratch },
  });
  const scale = side / Math.max(frame.width, frame.height);
  const width = Math.max(1, Math.round(frame.width * scale));
  const height = Math.max(1, Math.round(frame.height * scale));
  // A view without a warp has its picture's size; one in register is the frame at its own pixels.
  const file = view.warp ? await readHead(view.path, defaultPixelLimit) : view;
  const back: Homography | null = view.warp && invert3(view.warp);
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let px = ((x + 0.5) * view.width) / width - 0.5;
      let py = ((y + 0.5) * view.height) / height - 0.5;
      if (view.radial) [px, py] = bend(view.radial, px, py);
      if (back) [px, py] = project(back, px, py);
      data[y * width + x] = sample(
        small,
        ((px + 0.5) * small.width) / file.width - 0.5,
        ((py + 0.5) * small.height) / file.height - 0.5,
      );
    }
  }
  return { width, height, data };
}

function sample({ width, height, data }: Plane16, x: number, y: number): number {
  if (x < -0.5 || y < -0.5 || x > width - 0.5 || y > height - 0.5) return 0;
  const left = Math.min(width - 2, Math.max(0, Math.floor(x)));
  const top = Math.min(height - 2, Math.max(0, Math.floor(y)));
  const [fx, fy] = [x - left, y - top];
  const at = top * width + left;
  const upper = data[at] * (1 - fx) + data[at + 1] * fx;
  const lower = data[at + width] * (1 - fx) + data[at + width + 1] * fx;
  return (upper * (1 - fy) + lower * fy) / 65535;
}
