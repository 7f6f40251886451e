/** How long rendering the demonstration, and working through it, will take: by measured rates. */
import { sceneOrders } from './demonstration/make-plate.ts';
import { type DemonstrationObject } from './demonstration/object.ts';
import { type SceneOrder } from './demonstration/scene-store.ts';
import { type Shoot } from './demonstration/shots.ts';

/** Measured: processor seconds for a million pixels of traced scenes, and of captures. */
const secondsPerMegapixel = { scenes: 7, rendering: 0.3, stages: 1 };

export interface ExpectedSeconds {
  readonly rendering: number;
  readonly stages: number;
}

/** Processor seconds. @param isKept Whether a scene has been traced before. */
export async function expectedSeconds(
  tasks: readonly { readonly object: DemonstrationObject; readonly shoots: readonly Shoot[] }[],
  isKept: (order: SceneOrder) => Promise<boolean>,
): Promise<ExpectedSeconds> {
  let [scenes, captures] = [0, 0];
  for (const { object, shoots } of tasks) {
    for (const order of sceneOrders(object)) {
      if (!order.part && !(await isKept(order))) scenes += order.width * order.height;
    }
    for (const { standing, frames } of shoots) {
      captures += standing.view.width * standing.view.height * frames.length;
    }
  }
  const rate = secondsPerMegapixel;
  return {
    rendering: (scenes * rate.scenes + captures * rate.rendering) / 1e6,
    stages: (captures * rate.stages) / 1e6,
  };
}

export function waitWords(seconds: number): string {
  if (seconds < 50) return `about ${Math.max(10, Math.ceil(seconds / 10) * 10)} seconds`;
  const minutes = Math.ceil(seconds / 30) / 2;
  return minutes === 1 ? 'about a minute' : `about ${minutes} minutes`;
}
