/** Side lamp, raking lamp and lamp that goes round the plate. */
import {
  fallOffOfTwo,
  fallOffStops,
  distanceForFallOff,
  heightForRelief,
} from '../raking-light.ts';
import { excludedFrom, mirrorClearance, standsInView } from '../lamp-zone.ts';
import { ballPrecision, lampDiagonals, lightRings } from '../light-positions.ts';
import { figure, sectionPlan, type SectionPlan } from './plan.ts';
import type { PlanInput } from './plan-input.ts';

/** Fall-off that is taken as level, stops: a third, the step of most cameras. */
const levelStops = 1 / 3;
/** A wall that is a quarter brighter than the flat is plainly seen: our own choice. */
const plainContrast = 0.25;
/** Radius of a ball's picture for a direction good to about a degree, pixels. */
const ballRadius = 100;

const plateOf = ({ plateWidth, plateHeight }: PlanInput) => [plateWidth, plateHeight] as const;

export function planLamp(input: PlanInput): SectionPlan {
  const plate = plateOf(input);
  const stand = { plate, cameraDistance: input.cameraDistance };
  const lamp = {
    bearing: input.lampBearing,
    height: input.lampHeight,
    distance: input.lampDistance,
    size: input.lampSize,
  };
  const clearance = mirrorClearance(lamp, stand);
  const limit = excludedFrom(lamp, stand, input.warp);
  const fall = fallOffStops(lamp, plate);
  return sectionPlan(
    'lamp',
    [
      figure('lamp-place', [lamp.bearing, lamp.height], '°'),
      figure('excluded-from', limit, '°'),
      figure('clearance', clearance, '°'),
      figure('fall-off', fall, 'stops'),
      figure('fall-off-two', fallOffOfTwo(lamp, plate), 'stops'),
      figure('level-distance', distanceForFallOff(lamp, plate, levelStops), 'mm'),
    ],
    [
      ['lamp-in-mirror', clearance <= input.warp, lamp.height, limit],
      ['lamp-in-view', standsInView(lamp, stand)],
      ['lamp-uneven', fall > levelStops, fall],
    ],
  );
}

/** Height of the raking lamp: as high as the relief allows, within the usual 5 to 20 degrees. */
export function rakingHeight(input: PlanInput): number {
  const most = heightForRelief(input.reliefSlope, plainContrast);
  return Math.round(Math.min(20, Math.max(5, most)));
}

export function planRaking(input: PlanInput): SectionPlan {
  const plate = plateOf(input);
  const height = rakingHeight(input);
  const lamp = { bearing: 90, height, distance: input.rakingDistance };
  const most = heightForRelief(input.reliefSlope, plainContrast);
  const fall = fallOffStops(lamp, plate);
  return sectionPlan(
    'raking',
    [
      figure('raking-height', height, '°'),
      figure('relief-height', most, '°'),
      figure('glint-slope', (90 - height) / 2, '°'),
      figure('fall-off', fall, 'stops'),
      figure('level-distance', distanceForFallOff(lamp, plate, levelStops), 'mm'),
      figure('raking-bearings', [30, 150, 270], '°'),
    ],
    [
      ['relief-too-flat', most < 5, input.reliefSlope, most],
      ['lamp-uneven', fall > levelStops, fall],
    ],
  );
}

export function planLights(input: PlanInput, pixelsPerMillimetre: number): SectionPlan {
  const plate = plateOf(input);
  const diagonal = Math.hypot(...plate);
  const rings = lightRings(input.lightCount);
  const distance = lampDiagonals[0] * diagonal;
  const stand = { plate, cameraDistance: input.cameraDistance };
  const limit = Math.min(
    ...[0, 45, 90].map((bearing) =>
      excludedFrom({ bearing, distance, size: input.lampSize }, stand, input.warp),
    ),
  );
  const ball = (2 * ballRadius) / pixelsPerMillimetre;
  return sectionPlan(
    'lights',
    [
      figure(
        'ring-heights',
        rings.map(({ height }) => height),
        '°',
      ),
      figure(
        'ring-counts',
        rings.map(({ bearings }) => bearings.length),
        '',
      ),
      figure('light-distance', lampDiagonals[0] * diagonal, 'mm'),
      figure('light-distance-most', lampDiagonals[1] * diagonal, 'mm'),
      figure('ball', ball, 'mm'),
      figure('ball-precision', ballPrecision(ballRadius), '°'),
    ],
    [
      ['ring-in-mirror', rings[rings.length - 1].height >= limit, limit],
      ['lamp-over-lens', distance * Math.sin((65 * Math.PI) / 180) > input.cameraDistance],
      ['lights-few', input.lightCount < 24, input.lightCount],
    ],
  );
}
