/** What the planner is told: plate, camera, and what is at hand. Every field has a usual value. */

export interface PlanInput {
  /** mm as the camera sees it. */
  readonly plateWidth: number;
  readonly plateHeight: number;
  /** Largest lean of the surface, degrees, and its highest over its lowest place, mm. */
  readonly warp: number;
  readonly depth: number;
  /** mm */
  readonly focalLength: number;
  readonly cameraDistance: number;
  /** Outer diameter of the lens's front, mm. */
  readonly lensFront: number;
  /** Micrometres, and pixels along the longer and the shorter side. */
  readonly pixelPitch: number;
  readonly sensorLong: number;
  readonly sensorShort: number;
  readonly iso: number;
  /** Side lamp: degrees, mm, width of its diffuser. */
  readonly lampBearing: number;
  readonly lampHeight: number;
  readonly lampDistance: number;
  readonly lampSize: number;
  /** Slope of the relief that a raking lamp must show, degrees. */
  readonly reliefSlope: number;
  readonly rakingDistance: number;
  readonly glassIndex: number;
  /** mm */
  readonly glassThickness: number;
  /** From the plate along the path of light, mm. */
  readonly panelDistance: number;
  /** Brightest over darkest place that matters, stops. */
  readonly rangeStops: number;
  /** Places of the lamp in a many-light set. */
  readonly lightCount: number;
  /** Light for arranging and focusing: lux and minutes. */
  readonly focusLux: number;
  readonly focusMinutes: number;
}

export type PlanField = keyof PlanInput;

/** The worked example of the page: a half plate under an ordinary camera. */
export const exampleInput: PlanInput = {
  plateWidth: 108,
  plateHeight: 140,
  warp: 0.5,
  depth: 0.5,
  focalLength: 100,
  cameraDistance: 900,
  lensFront: 60,
  pixelPitch: 3.76,
  sensorLong: 9504,
  sensorShort: 6336,
  iso: 100,
  lampBearing: 315,
  lampHeight: 45,
  lampDistance: 650,
  lampSize: 120,
  reliefSlope: 2,
  rakingDistance: 600,
  glassIndex: 1.52,
  glassThickness: 1,
  panelDistance: 450,
  rangeStops: 12,
  lightCount: 48,
  focusLux: 300,
  focusMinutes: 10,
};

/** Least and most that a field takes, and the step of its control. */
export const planLimits: Readonly<
  Record<PlanField, readonly [least: number, most: number, step: number]>
> = {
  plateWidth: [10, 1000, 0.1],
  plateHeight: [10, 1000, 0.1],
  warp: [0, 10, 0.1],
  depth: [0.05, 20, 0.05],
  focalLength: [10, 1000, 1],
  cameraDistance: [50, 10000, 1],
  lensFront: [5, 300, 1],
  pixelPitch: [0.5, 30, 0.01],
  sensorLong: [500, 60000, 1],
  sensorShort: [500, 60000, 1],
  iso: [12, 6400, 1],
  lampBearing: [0, 360, 1],
  lampHeight: [1, 90, 1],
  lampDistance: [50, 10000, 1],
  lampSize: [1, 2000, 1],
  reliefSlope: [0.1, 45, 0.1],
  rakingDistance: [50, 10000, 1],
  glassIndex: [1.1, 3, 0.01],
  glassThickness: [0.05, 20, 0.05],
  panelDistance: [50, 10000, 1],
  rangeStops: [1, 24, 0.5],
  lightCount: [6, 300, 1],
  focusLux: [0, 100000, 10],
  focusMinutes: [0, 600, 1],
};

/** The fields that are outside their limits, or not numbers. */
export function faultyFields(input: PlanInput): PlanField[] {
  return (Object.keys(planLimits) as PlanField[]).filter((field) => {
    const [least, most] = planLimits[field];
    return !(input[field] >= least && input[field] <= most);
  });
}
