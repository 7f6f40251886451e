/** Brings the stage's controls into line with what is shown. */
import type { PlateStage } from './stage.ts';
import { modes } from './view-state.ts';
import { measures, words } from './words.ts';

function setValue(stage: PlateStage, field: string, value: string): void {
  for (const control of stage.querySelectorAll<HTMLInputElement | HTMLSelectElement>(
    `[data-set="${field}"]`,
  ))
    if (control.value !== value) control.value = value;
}

function press(stage: PlateStage, action: string, pressed: boolean): void {
  for (const button of stage.querySelectorAll(`[data-do="${action}"]`))
    button.setAttribute('aria-pressed', String(pressed));
}

/** "55 % across" */
export function dividerWords(share: number): string {
  return words.picture.across(measures.percent(Math.round(share * 100) / 100));
}

export function reflectControls(stage: PlateStage): void {
  const { state } = stage;
  for (const mode of modes) press(stage, `mode:${mode}`, state.mode === mode);
  for (const panel of stage.querySelectorAll<HTMLElement>('[data-panel]'))
    panel.hidden = panel.dataset['panel'] !== state.mode;
  press(stage, 'correct', state.corrected);
  press(stage, 'screen', document.fullscreenElement === stage);
  setValue(stage, 'first', state.of[0] ?? '');
  setValue(stage, 'second', state.of[1] ?? '');
  setValue(stage, 'divider', String(Math.round(state.divider * 1000) / 10));
  setValue(stage, 'turn', String(state.turn));
  setValue(stage, 'fixed', state.fixed);
  setValue(stage, 'room', state.room);
  setValue(stage, 'tilt', String(state.tilt));
  setValue(stage, 'bearing', String(Math.round(state.bearing) % 360));
  setValue(stage, 'height', String(Math.round(state.height)));
  const divider = stage.querySelector('input[data-set="divider"]');
  divider?.setAttribute('aria-valuetext', dividerWords(state.divider));
  const turn = stage.querySelector('input[data-set="turn"]');
  turn?.setAttribute('aria-valuetext', words.picture.degrees(String(state.turn)));
  const turned = stage.querySelector('[data-part="turned"]');
  if (turned) turned.textContent = `${state.turn}°`;
  names(stage);
}

/** What a mode that works a picture out shows; null where the view's own name says it. */
export function captionOf(stage: PlateStage): string | null {
  const { mode } = stage.state;
  if (mode === 'tilt') return stage.tilt.caption;
  if (stage.surfaces.first?.physical === false) return null;
  return mode === 'lamp' ? stage.lamp.caption : mode === 'range' ? stage.range.caption : null;
}

/** The names of what is shown, on the sides where it is shown. */
function names(stage: PlateStage): void {
  const { state, data, parts } = stage;
  const name = (id: string | undefined) => data.views.find((v) => v.id === id)?.name ?? '';
  const two = ['slide', 'beside', 'difference'].includes(state.mode);
  // A divider that keeps its place on the plate is turned over with the plate.
  const turned = state.mode === 'slide' && state.fixed === 'plate' && state.corrected;
  const [left, right] = turned ? [state.of[1], state.of[0]] : [state.of[0], state.of[1]];
  parts.firstName.textContent = captionOf(stage) ?? name(two ? left : state.of[0]);
  const other = state.mode === 'beside' ? stage.other.name : null;
  parts.secondName.textContent = two ? (other ?? name(right)) : '';
}
