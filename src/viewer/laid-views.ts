/** Which views lie on each surface for a state, and how they are combined. */
import type { Line } from './divider-line.ts';
import type { Look } from './look.ts';
import type { PlateStage } from './stage.ts';
import type { StageData } from './stage-data.ts';
import type { SurfaceView } from './surface.ts';
import { words } from './words.ts';

/** What lies on one surface, and how its layers are combined. */
export interface Laid {
  readonly views: readonly SurfaceView[];
  readonly look: Look;
}

const single: Look = { kind: 'single' };

/** How strongly Difference shows a change: a tenth of the tone scale is half of the grey. */
const stretch = 5;

function surfaceView(data: StageData, id: string): SurfaceView {
  const found = data.views.find((v) => v.id === id);
  if (found === undefined) throw new Error(words.address.noView(id));
  // A view in register may have more or fewer pixels than the frame; regions are pixels of the frame.
  const { width, height } = data.frame;
  return found.registered ? { ...found, width, height } : found;
}

/** Whatever stands for a view is measured in the same pixels as the view itself. */
function inFrameOf({ width, height }: SurfaceView, views: readonly SurfaceView[]): SurfaceView[] {
  return views.map((view) => ({ ...view, width, height }));
}

/**
 * @param physical Whether the layers are combined by shader. @param line The divider on the
 *   screen; null while nothing is in sight.
 */
export function laidFor(stage: PlateStage, physical: boolean, line: () => Line | null): Laid[] {
  const { state, data, lamp, range, other } = stage;
  const of = state.of.map((id) => surfaceView(data, id));
  const alone = (view: SurfaceView): Laid => ({ views: [view], look: single });
  switch (state.mode) {
    case 'look':
      return [alone(of[0])];
    case 'slide': {
      const divider = line();
      return [{ views: of, look: divider === null ? single : { kind: 'divide', line: divider } }];
    }
    case 'tilt': {
      const still = physical ? null : stage.tilt.still();
      return [still ? alone(still) : { views: of, look: stage.tilt.look() }];
    }
    case 'lamp':
      return [
        physical ? { views: inFrameOf(of[0], lamp.onSurface()), look: lamp.look() } : alone(of[0]),
      ];
    case 'range':
      return [physical ? { views: range.onSurface(), look: range.look() } : alone(of[0])];
    case 'beside':
      return [alone(of[0]), alone(other.view ?? of[1] ?? of[0])];
    case 'difference':
      return [
        alone(of[0]),
        alone(of[1] ?? of[0]),
        { views: of, look: { kind: 'difference', stretch } },
      ];
  }
}
