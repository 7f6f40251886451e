/** The scale bar below the picture, in millimetres of the plate; none when the scale is unknown. */
import { scaleBar } from './scale-bar.ts';
import type { PlateStage } from './stage.ts';
import { frameOf } from './view-state.ts';
import { words } from './words.ts';

export function showScale(stage: PlateStage): void {
  const { parts, state, data, surfaces } = stage;
  const place = surfaces.placing();
  const frame = frameOf(data, state.mode, state.of);
  const known = frame.pixelsPerMillimetre;
  const bar = place && known !== null ? scaleBar(place.scale * known) : null;
  const rule = parts.scale.querySelector<HTMLElement>('[data-part="rule"]');
  const label = parts.scale.querySelector<HTMLElement>('[data-part="length"]');
  if (rule === null || label === null) return;
  rule.hidden = bar === null;
  if (bar !== null) rule.style.width = `${bar.pixels}px`;
  label.textContent = place === null ? '' : (bar?.label ?? words.picture.noScale);
}
