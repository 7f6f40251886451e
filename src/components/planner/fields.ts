/** The planner's fields in their groups, each with the symbol of its unit, and pages that help. */
import type { PlanField } from '../../optics/plan/plan-input.ts';
import type { PlanSectionId } from '../../optics/plan/plan.ts';

export const fieldGroups = {
  plate: ['plateWidth', 'plateHeight', 'warp', 'depth'],
  camera: [
    'focalLength',
    'cameraDistance',
    'lensFront',
    'pixelPitch',
    'sensorLong',
    'sensorShort',
    'iso',
  ],
  lamp: ['lampBearing', 'lampHeight', 'lampDistance', 'lampSize'],
  raking: ['reliefSlope', 'rakingDistance'],
  axial: ['glassIndex', 'glassThickness', 'panelDistance'],
  series: ['rangeStops', 'lightCount', 'focusLux', 'focusMinutes'],
} as const satisfies Readonly<Record<string, readonly PlanField[]>>;

/** Symbols; `stops` is a word, which the page's language has. */
export const fieldUnits: Readonly<Record<PlanField, string>> = {
  plateWidth: 'mm',
  plateHeight: 'mm',
  warp: '°',
  depth: 'mm',
  focalLength: 'mm',
  cameraDistance: 'mm',
  lensFront: 'mm',
  pixelPitch: 'µm',
  sensorLong: 'px',
  sensorShort: 'px',
  iso: '',
  lampBearing: '°',
  lampHeight: '°',
  lampDistance: 'mm',
  lampSize: 'mm',
  reliefSlope: '°',
  rakingDistance: 'mm',
  glassIndex: '',
  glassThickness: 'mm',
  panelDistance: 'mm',
  rangeStops: 'stops',
  lightCount: '',
  focusLux: 'lx',
  focusMinutes: 'min',
};

/** The technique page that says how a part of a plan is done. */
export const sectionTechniques: Readonly<Record<PlanSectionId, string | null>> = {
  camera: null,
  dark: 'normal',
  lamp: 'normal',
  raking: 'raking',
  axial: 'axial',
  bracket: 'bracket',
  lights: 'lights',
  dose: null,
};
