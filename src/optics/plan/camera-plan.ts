/** Camera, aperture and black surround of a plan. */
import {
  bellowsStops,
  bestAperture,
  blurAt,
  cutOff,
  depthOfField,
  magnification,
  pixelsPerMillimetre,
} from '../close-up.ts';
import { darkMask, mirrorHalfAngle } from '../mirror-view.ts';
import { figure, sectionPlan, type SectionPlan } from './plan.ts';
import type { PlanInput } from './plan-input.ts';

/** Numbers that more than one section needs. */
export interface CameraNumbers {
  readonly magnification: number;
  readonly pixelsPerMillimetre: number;
  readonly fNumber: number;
  /** Diameter of the opening as the plate sees it, mm. */
  readonly opening: number;
}

/** Lenses are sharp from about here: common practice, no source. */
const widestUsed = 5.6;

export function cameraNumbers(input: PlanInput): CameraNumbers {
  const m = magnification(input.focalLength, input.cameraDistance);
  const { fNumber } = bestAperture(m, input.pixelPitch / 1000, input.depth, widestUsed);
  return {
    magnification: m,
    pixelsPerMillimetre: pixelsPerMillimetre(m, input.pixelPitch / 1000),
    fNumber,
    opening: input.focalLength / fNumber,
  };
}

export function planCamera(input: PlanInput, numbers: CameraNumbers): SectionPlan {
  const { magnification: m, pixelsPerMillimetre: scale, fNumber } = numbers;
  const pitch = input.pixelPitch / 1000;
  const blur = blurAt(fNumber, m, pitch, input.depth);
  const sides = [input.plateWidth, input.plateHeight].sort((a, b) => b - a);
  const field = [input.sensorLong / scale, input.sensorShort / scale];
  const depth = depthOfField(fNumber, pitch, m);
  return sectionPlan(
    'camera',
    [
      figure('magnification', m, ''),
      figure('scale', scale, 'px/mm'),
      figure('resolution', scale * 25.4, 'ppi'),
      figure('field', field, 'mm'),
      figure('aperture', fNumber, 'f/'),
      figure('depth-of-field', depth, 'mm'),
      figure('blur', 1000 * blur.together, 'µm'),
      figure('cut-off', cutOff(fNumber, m), 'lp/mm'),
      figure('bellows', bellowsStops(m), 'stops'),
    ],
    [
      ['plate-too-large', field[0] < sides[0] || field[1] < sides[1], field[0], field[1]],
      ['resolution-low', scale * 25.4 < 600, scale * 25.4],
      ['depth-short', depth < input.depth, depth, input.depth],
      ['blur-over-pixels', blur.together > 3 * (pitch / m), blur.together * scale],
    ],
  );
}

export function planDark(input: PlanInput, { opening }: CameraNumbers): SectionPlan {
  const { plateWidth, plateHeight, cameraDistance, warp, lensFront } = input;
  const mask = darkMask([plateWidth, plateHeight], {
    cameraDistance,
    openingDiameter: opening,
    warp,
  });
  const angle = (side: number) => mirrorHalfAngle(side, cameraDistance);
  return sectionPlan(
    'dark',
    [
      figure('mirror-angle', [angle(plateWidth), angle(plateHeight)], '°'),
      figure('mask', [mask.width, mask.height], 'mm'),
      figure('hole', lensFront, 'mm'),
      figure('hole-on-plate', lensFront / 2, 'mm'),
    ],
    [['mask-large', Math.max(mask.width, mask.height) > 1000, mask.width, mask.height]],
  );
}
