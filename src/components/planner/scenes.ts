/** The planned set-ups as scenes to draw. */
import type { Plan } from '../../optics/plan/plan.ts';
import type { PlanInput } from '../../optics/plan/plan-input.ts';
import { planSvg } from '../setup/draw-plan.ts';
import { sectionSvg } from '../setup/draw-section.ts';
import { sceneOfRecord } from '../setup/scene.ts';
import type { PlanSpeech } from './plan-value.ts';

export function plannedDrawings(
  plan: Plan,
  input: PlanInput,
  { words, measures }: PlanSpeech,
): string {
  const speech = { words: words.drawings, measures };
  const aperture = plan.sections[0].figures.find(({ id }) => id === 'aperture')?.value as number;
  const camera = { distance: input.cameraDistance, focalLength: input.focalLength, aperture };
  const size = [input.plateWidth, input.plateHeight] as const;
  const plate = { millimetres: size, aspect: size[0] / size[1] };
  return Object.values(plan.setups)
    .map((setup) => {
      const record = { ...setup, lamps: [...setup.lamps] };
      const scene = { ...sceneOfRecord(record, camera, plate), planned: true };
      const what = words.setupNames[setup.kind];
      return (
        `<figure class="planned"><div class="setup-drawings">` +
        `<div>${sectionSvg(scene, what, speech)}<p>${words.drawings.section}</p></div>` +
        `<div>${planSvg(scene, what, speech)}<p>${words.drawings.plan}</p></div>` +
        `</div><figcaption>${what[0].toUpperCase()}${what.slice(1)}.</figcaption></figure>`
      );
    })
    .join('');
}
