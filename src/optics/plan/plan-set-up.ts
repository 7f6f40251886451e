/**
 * From plate, camera and what is at hand to a plan: the one function behind the planner's page
 * and the command. Nothing but numbers; the words are the page's.
 */
import { cameraNumbers, planCamera, planDark } from './camera-plan.ts';
import { planAxial, planBracketSection, planDose } from './glass-plan.ts';
import { planLamp, planLights, planRaking, rakingHeight } from './lamp-plan.ts';
import type { Plan, PlannedSetup } from './plan.ts';
import { faultyFields, type PlanInput } from './plan-input.ts';

/** @throws RangeError when a field is outside its limits or the lens cannot focus so near. */
export function planSetUp(input: PlanInput): Plan {
  const faulty = faultyFields(input);
  if (faulty.length > 0) throw new RangeError(`Outside its limits: ${faulty.join(', ')}.`);
  const numbers = cameraNumbers(input);
  const parts = [
    planCamera(input, numbers),
    planDark(input, numbers),
    planLamp(input),
    planRaking(input),
    planAxial(input, numbers),
    planBracketSection(input),
    planLights(input, numbers.pixelsPerMillimetre),
    planDose(input, numbers),
  ];
  const endless = parts.some(({ section }) =>
    section.figures.some(({ value }) => ![value].flat().every(Number.isFinite)),
  );
  if (endless) {
    throw new RangeError(
      'So near, a plate of this size and lean shows the whole room: move the camera away.',
    );
  }
  return {
    sections: parts.map(({ section }) => section),
    warnings: parts.flatMap(({ warnings }) => warnings),
    setups: plannedSetups(input, parts[4].section.figures[0].value as readonly number[]),
  };
}

function plannedSetups(
  input: PlanInput,
  panel: readonly number[],
): Readonly<Record<string, PlannedSetup>> {
  const width = Math.ceil(Math.max(...panel));
  return {
    'side-lamp': {
      kind: 'normal',
      surround: 'dark',
      lamps: [
        {
          bearing: input.lampBearing,
          height: input.lampHeight,
          distance: input.lampDistance,
          size: input.lampSize,
          diffuser: input.lampSize,
        },
      ],
    },
    'raking-right': {
      kind: 'raking',
      surround: 'dark',
      lamps: [
        { bearing: 90, height: rakingHeight(input), distance: input.rakingDistance, size: 20 },
      ],
    },
    'through-glass': {
      kind: 'axial',
      surround: 'bright',
      glass: { index: input.glassIndex, thickness: input.glassThickness, angle: 45 },
      lamps: [
        { bearing: 90, height: 0, distance: input.panelDistance, size: width, diffuser: width },
      ],
    },
  };
}
