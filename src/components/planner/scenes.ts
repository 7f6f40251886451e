/** The planned set-ups as scenes to draw. */
import type { Plan, PlannedSetup } from '../../optics/plan/plan.ts';
import type { PlanInput } from '../../optics/plan/plan-input.ts';
import { planSvg } from '../setup/draw-plan.ts';
import { sectionSvg } from '../setup/draw-section.ts';
import { sceneOfRecord } from '../setup/scene.ts';
import { setupWords } from '../setup/words.ts';

const names: Readonly<Record<PlannedSetup['kind'], string>> = {
  normal: 'side lamp, dark surround',
  raking: 'raking lamp',
  axial: 'axial light through a glass',
};

export function plannedDrawings(plan: Plan, input: PlanInput): string {
  const aperture = plan.sections[0].figures.find(({ id }) => id === 'aperture')?.value as number;
  const camera = { distance: input.cameraDistance, focalLength: input.focalLength, aperture };
  const size = [input.plateWidth, input.plateHeight] as const;
  const plate = { millimetres: size, aspect: size[0] / size[1] };
  return Object.values(plan.setups)
    .map((setup) => {
      const record = { ...setup, lamps: [...setup.lamps] };
      const scene = { ...sceneOfRecord(record, camera, plate), planned: true };
      const what = names[setup.kind];
      return (
        `<figure class="planned"><div class="setup-drawings">` +
        `<div>${sectionSvg(scene, what)}<p>${setupWords.section}</p></div>` +
        `<div>${planSvg(scene, what)}<p>${setupWords.plan}</p></div>` +
        `</div><figcaption>${what[0].toUpperCase()}${what.slice(1)}.</figcaption></figure>`
      );
    })
    .join('');
}
