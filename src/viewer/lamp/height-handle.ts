/** The quarter circle: its drawing, and dragging the lamp along it. */
import type { PlateStage } from '../stage.ts';
import { beam, heightMarks, heightOf, hood } from './quarter.ts';
import { words } from '../words.ts';

const keySteps: Readonly<Record<string, number>> = {
  ArrowLeft: -2,
  ArrowDown: -2,
  ArrowRight: 2,
  ArrowUp: 2,
  PageDown: -15,
  PageUp: 15,
};

export class HeightHandle {
  constructor(stage: PlateStage, drawing: SVGSVGElement) {
    const set = (height: number) =>
      stage.change({ height: Math.min(90, Math.max(0, Math.round(height))) });
    const moveTo = (event: PointerEvent) => {
      const box = drawing.getBoundingClientRect();
      const view = drawing.viewBox.baseVal;
      const scale = view.width / box.width;
      set(heightOf((event.clientX - box.left) * scale, (event.clientY - box.top) * scale));
    };
    drawing.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return;
      drawing.setPointerCapture(event.pointerId);
      drawing.focus({ preventScroll: true });
      event.preventDefault();
      moveTo(event);
    });
    drawing.addEventListener('pointermove', (event) => {
      if (drawing.hasPointerCapture(event.pointerId)) moveTo(event);
    });
    drawing.addEventListener('keydown', (event) => {
      const step = keySteps[event.key];
      if (step === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      set(stage.state.height + step);
    });
  }
}

/** @param heights Of the captured lamps. */
export function drawHeight(panel: HTMLElement, height: number, heights: readonly number[]): void {
  const draw = (part: string, path: string) =>
    panel.querySelector(`[data-draw="${part}"]`)?.setAttribute('d', path);
  draw('beam', beam(height));
  draw('hood', hood(height));
  draw('heights', heightMarks([...new Set(heights.map(Math.round))]));
  const drawing = panel.querySelector('[data-part="quarter"]');
  drawing?.setAttribute('aria-valuenow', String(Math.round(height)));
  drawing?.setAttribute('aria-valuetext', words.lamp.height(String(Math.round(height))));
}
