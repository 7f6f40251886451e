/**
 * The divider that can be taken hold of: a two-toned line with a wedge where it meets the
 * picture's upper and lower edge. It is a slider for the keyboard and for screen readers; the
 * native range in the panel does the same without dragging.
 */
import { dividerWords } from './control-state.ts';
import { acrossBox, dividerShare } from './divider-line.ts';
import { toPlate } from './placing.ts';
import type { PlateStage } from './stage.ts';

const keySteps: Readonly<Record<string, number>> = {
  ArrowLeft: -0.01,
  ArrowDown: -0.01,
  ArrowRight: 0.01,
  ArrowUp: 0.01,
  PageDown: -0.1,
  PageUp: 0.1,
  Home: -1,
  End: 1,
};

export class DividerHandle {
  private readonly stage: PlateStage;
  private readonly handle: HTMLElement;
  private readonly bar: HTMLElement;

  constructor(stage: PlateStage) {
    this.stage = stage;
    const bar = stage.querySelector<HTMLElement>('[data-part="divider"]');
    if (bar === null) throw new Error('The stage’s markup has no divider.');
    this.bar = bar;
    this.handle = bar;
    this.handle.addEventListener('pointerdown', (event) => this.take(event));
    this.handle.addEventListener('pointermove', (event) => {
      if (this.handle.hasPointerCapture(event.pointerId)) this.moveTo(event);
    });
    this.handle.addEventListener('keydown', (event) => this.key(event));
  }

  private take(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.handle.setPointerCapture(event.pointerId);
    this.handle.focus({ preventScroll: true });
    event.preventDefault();
  }

  private moveTo(event: PointerEvent): void {
    const around = this.stage.surfaces.first?.element.getBoundingClientRect();
    const placing = this.stage.surfaces.placing();
    if (around === undefined || placing === null) return;
    const [x, y] = [event.clientX - around.left, event.clientY - around.top];
    const { state, data } = this.stage;
    const { width, height } = data.frame;
    const divider =
      state.fixed === 'screen'
        ? dividerShare(this.stage.surfaces.box(), state.turn, x, y)
        : dividerShare({ x: 0, y: 0, width, height }, state.turn, ...toPlate(placing, x, y));
    this.set(divider);
  }

  private key(event: KeyboardEvent): void {
    const step = keySteps[event.key];
    if (step === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    this.set(Math.min(1, Math.max(0, this.stage.state.divider + step)));
  }

  private set(divider: number): void {
    this.stage.change({ divider });
  }

  /** Put the line where the state says. */
  reflect(): void {
    const { state, surfaces } = this.stage;
    const line = state.mode === 'slide' ? surfaces.line() : null;
    const box = surfaces.box();
    const ends = line === null ? null : acrossBox(line, box);
    this.bar.hidden = ends === null;
    this.bar.setAttribute('aria-valuenow', String(Math.round(state.divider * 100)));
    this.bar.setAttribute('aria-valuetext', dividerWords(state.divider));
    if (ends === null) return;
    const [[ax, ay], [bx, by]] = ends[0][1] <= ends[1][1] ? ends : [ends[1], ends[0]];
    const length = Math.hypot(bx - ax, by - ay);
    const angle = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI - 90;
    this.bar.style.height = `${length}px`;
    this.bar.style.transform = `translate(${ax}px, ${ay}px) rotate(${angle}deg) translateX(-50%)`;
  }
}
