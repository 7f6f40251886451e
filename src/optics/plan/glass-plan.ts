/** Axial light through a glass, bracket, and the light that the plate takes. */
import { doublePassPolarised, glassFigures } from '../axial-glass.ts';
import { planBracket, usualSensor } from '../bracket-plan.ts';
import { guideNumber } from '../flash.ts';
import { doseOf, exposureDose, luxHours } from '../light-dose.ts';
import { panelEvenness, panelToFill } from '../light-panel.ts';
import type { CameraNumbers } from './camera-plan.ts';
import { figure, sectionPlan, type SectionPlan } from './plan.ts';
import type { PlanInput } from './plan-input.ts';

export function planAxial(input: PlanInput, numbers: CameraNumbers): SectionPlan {
  const { plateWidth, plateHeight, cameraDistance, warp, panelDistance } = input;
  const glass = { index: input.glassIndex, thickness: input.glassThickness, angle: 45 };
  const panel = panelToFill(
    [plateWidth, plateHeight],
    { cameraDistance, openingDiameter: numbers.opening, warp },
    panelDistance,
  );
  const figures = glassFigures(glass, numbers.pixelsPerMillimetre);
  const evenness = panelEvenness(panel, [plateWidth, plateHeight]);
  const across = doublePassPolarised(glass, 0);
  const along = doublePassPolarised(glass, 90);
  return sectionPlan(
    'axial',
    [
      figure('panel', [panel.width, panel.height], 'mm'),
      figure('panel-evenness', 100 * (1 - evenness), '%'),
      figure('glass-loss', figures.lossStops, 'stops'),
      figure('ghost', figures.ghostMillimetres, 'mm'),
      figure('ghost-pixels', figures.ghostPixels ?? NaN, 'px'),
      figure('ghost-strength', 100 * figures.ghostStrength, '%'),
      figure('polarised', 100 * figures.polarisedShare, '%'),
      figure('polariser', Math.log2(across / along), 'stops'),
    ],
    [
      ['panel-large', Math.max(panel.width, panel.height) > 800, panel.width, panel.height],
      ['glass-in-way', panelDistance < Math.max(plateWidth, plateHeight), panelDistance],
      ['glass-thick', input.glassThickness > 2, figures.ghostMillimetres],
    ],
  );
}

/** Eight hours on display at 50 lux, lux hours. */
const displayDay = 400;

/** Signal to noise that the darkest place must have: our own choice. */
const shadowRatio = 10;
const mostStep = 2;

/** The bracket with its middle frame at a quarter of a second, a time that a stand bears well. */
export function bracketOf(input: PlanInput) {
  const wish = {
    range: 2 ** input.rangeStops,
    clipSeconds: 1,
    sensor: usualSensor,
    ratio: shadowRatio,
    mostStep,
  };
  const loose = planBracket(wish);
  const middle = loose.seconds[loose.seconds.length >> 1];
  return planBracket({ ...wish, clipSeconds: 0.25 / middle });
}

export function planBracketSection(input: PlanInput): SectionPlan {
  const plan = bracketOf(input);
  return sectionPlan(
    'bracket',
    [
      figure('frame-range', plan.frameStops, 'stops'),
      figure('frames', plan.seconds.length, ''),
      figure('step', plan.stepStops, 'stops'),
      figure('times', plan.seconds, 's'),
      figure('held', plan.heldStops, 'stops'),
    ],
    [['bracket-long', plan.seconds[plan.seconds.length - 1] > 10, plan.seconds.at(-1) ?? 0]],
  );
}

export function planDose(input: PlanInput, numbers: CameraNumbers): SectionPlan {
  const { iso, lightCount, focusLux, focusMinutes } = input;
  const once = luxHours(exposureDose(numbers.fNumber, iso, numbers.magnification));
  const { seconds } = bracketOf(input);
  const middle = seconds[seconds.length >> 1];
  const bracket = once * seconds.reduce((sum, time) => sum + time / middle, 0);
  const lights = once * lightCount;
  const focus = (focusLux * focusMinutes) / 60;
  const all = doseOf(
    [focus, 2 * once, bracket, lights].map((dose, i) => ({ name: String(i), luxHours: dose })),
  );
  return sectionPlan(
    'dose',
    [
      figure('dose-exposure', once, 'lx h'),
      figure('dose-focus', focus, 'lx h'),
      figure('dose-bracket', bracket, 'lx h'),
      figure('dose-lights', lights, 'lx h'),
      figure('dose-all', all.luxHours, 'lx h'),
      figure('dose-display', all.displayHours, 'h'),
      figure(
        'flash-guide',
        guideNumber(numbers.fNumber, numbers.magnification, input.lampDistance, iso),
        '',
      ),
    ],
    [
      ['focus-dose', focus > all.luxHours / 2 && focus > 10, (100 * focus) / all.luxHours],
      ['dose-high', all.luxHours > displayDay, all.luxHours],
    ],
  );
}
