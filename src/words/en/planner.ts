/** The words of the planner in English: on its page, in the browser, and on the command line. */
import type { PlanField } from '../../optics/plan/plan-input.ts';
import type { PlanSectionId } from '../../optics/plan/plan.ts';
import { plural } from '../locale.ts';
import { drawings } from './drawings.ts';
import { planned } from './planned.ts';

const many = plural('en');

export const planner = {
  title: 'Set-up planner',
  lead: 'Before the shutter: where lamp, mask, glass and panel must stand so that the plate sees only what it should.',
  example:
    'A worked example: a half plate under a camera with a 100 mm lens. Change a number and the rest follows; nothing leaves this page.',
  exampleAlone: 'Without script this page shows the worked example and the formulas.',
  inputs: 'What is at hand',
  results: 'What follows',
  drawingsTitle: 'The set-ups, to scale',
  warnings: 'Look at this first',
  noWarnings: 'Nothing to warn of.',
  warningsCount: (count: number) =>
    count === 0
      ? 'Nothing to warn of.'
      : many(count, { one: 'One warning.', other: `${count} warnings.` }),
  formula: 'Formula and source',
  sheet: 'Set-up sheet',
  sheetNote: 'Print this page for one sheet with the numbers and the cautions.',
  print: 'Print the set-up sheet',
  cautionsTitle: 'Cautions',
  setups: 'For sitting.yaml',
  figure: 'Figure',
  value: 'Value',
  faulty: (fields: readonly string[]) => `Outside its limits: ${fields.join(', ')}.`,
  technique: 'How it is done',

  groups: {
    plate: 'The plate',
    camera: 'Camera and lens',
    lamp: 'Side lamp',
    raking: 'Raking lamp',
    axial: 'Axial light',
    series: 'Series and light',
  },

  fields: {
    plateWidth: 'Width as the camera sees it',
    plateHeight: 'Height',
    warp: 'Largest lean of the surface',
    depth: 'Highest over lowest place',
    focalLength: 'Focal length',
    cameraDistance: 'Lens to plate',
    lensFront: 'Diameter of the lens’s front',
    pixelPitch: 'Pitch of the sensor',
    sensorLong: 'Pixels, longer side',
    sensorShort: 'Pixels, shorter side',
    iso: 'ISO speed',
    lampBearing: 'Bearing, clockwise from the top edge',
    lampHeight: 'Height above the plate',
    lampDistance: 'Lamp to the plate’s middle',
    lampSize: 'Width of its face or diffuser',
    reliefSlope: 'Slope that must show',
    rakingDistance: 'Raking lamp to the plate’s middle',
    glassIndex: 'Index of the glass',
    glassThickness: 'Thickness of the glass',
    panelDistance: 'Plate to panel, along the light',
    rangeStops: 'Range to hold',
    lightCount: 'Places of the lamp',
    focusLux: 'Light while focusing',
    focusMinutes: 'Time of focusing',
  } satisfies Record<PlanField, string>,

  /** Units that are words; the others are symbols. */
  units: {
    stops: 'stops',
    pixelsPerMillimetre: 'px per mm',
    linePairs: 'line pairs per mm',
  },

  sections: {
    camera: 'Camera and aperture',
    dark: 'Dark surround for the positive',
    lamp: 'Side lamp',
    raking: 'Raking lamp',
    axial: 'Axial light through a glass',
    bracket: 'Bracket of exposures',
    lights: 'Many lights',
    dose: 'Light that the plate receives',
  } satisfies Record<PlanSectionId, string>,

  setupNames: {
    normal: 'side lamp, dark surround',
    raking: 'raking lamp',
    axial: 'axial light through a glass',
  },

  cautions: [
    'Never touch or wipe the image side: even a swab leaves a scratch.',
    'Do not open a sealed package without a photograph conservator. Keep old glass and seals.',
    'Weeping or broken glass: stop, do not wipe, call a conservator. Edges are sharp.',
    'Mercury is in the image and cyanide may be left from old cleaning: nitrile gloves, fresh air, no heat; wash your hands.',
    'Limit the light: lamps out between exposures, no ultraviolet, at most 2 °C of warming in all. Write down the dose.',
    'Clamp glass, arms and leads so that nothing can fall on the plate; take the glass away before reaching for it.',
    'Lamps get hot. Flash units hold a dangerous charge after they are switched off; warn people who are sensitive to flashes.',
    'Follow local rules, and leave ultraviolet and treatment to those who are trained and licensed.',
  ],
  drawings,
  ...planned,
};

export type PlannerWords = typeof planner;
