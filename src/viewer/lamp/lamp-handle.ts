/**
 * The lamp on the plate's border: dragged along its track, or stepped with the arrow keys. It is
 * a slider for the keyboard and for screen readers; the native ranges in the panel do the same.
 */
import { regionOnScreen } from '../placing.ts';
import type { PlateStage } from '../stage.ts';
import { frameOf, type Region } from '../view-state.ts';
import { bearingOf, lampTrack, onTrack } from './border.ts';
import { words } from '../words.ts';

const keySteps: Readonly<Record<string, number>> = {
  ArrowLeft: -5,
  ArrowDown: -5,
  ArrowRight: 5,
  ArrowUp: 5,
  PageDown: -45,
  PageUp: 45,
};

export class LampHandle {
  private readonly stage: PlateStage;
  private readonly lamp: HTMLElement;
  private readonly track: SVGElement | null;
  /** Bearings of the captured lamps. */
  marks: readonly number[] = [];

  constructor(stage: PlateStage, lamp: HTMLElement) {
    this.stage = stage;
    this.lamp = lamp;
    this.track = stage.querySelector('[data-draw="track"]');
    lamp.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return;
      lamp.setPointerCapture(event.pointerId);
      lamp.focus({ preventScroll: true });
      event.preventDefault();
    });
    lamp.addEventListener('pointermove', (event) => {
      if (lamp.hasPointerCapture(event.pointerId)) this.moveTo(event);
    });
    lamp.addEventListener('keydown', (event) => {
      const step = keySteps[event.key];
      if (step === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      this.set(this.stage.state.bearing + step);
    });
  }

  private place(): { readonly track: Region; readonly mirrored: boolean } | null {
    const { surfaces, data, state } = this.stage;
    const placing = surfaces.placing();
    if (placing === null) return null;
    const { width, height } = frameOf(data, state.mode, state.of);
    const plate = regionOnScreen(placing, { x: 0, y: 0, width, height });
    return { track: lampTrack(plate, surfaces.box()), mirrored: placing.mirrored };
  }

  private moveTo(event: PointerEvent): void {
    const place = this.place();
    const around = this.stage.surfaces.first?.element.getBoundingClientRect();
    if (place === null || around === undefined) return;
    const [x, y] = [event.clientX - around.left, event.clientY - around.top];
    this.set(bearingOf(place.track, x, y, place.mirrored));
  }

  private set(bearing: number): void {
    this.stage.change({ bearing: Math.round(((bearing % 360) + 360) % 360) % 360 });
  }

  /** Put the lamp where the state says. */
  reflect(): void {
    const { state } = this.stage;
    const place = state.mode === 'lamp' ? this.place() : null;
    this.lamp.hidden = place === null;
    this.track?.setAttribute('d', place === null ? '' : this.trackPath(place));
    if (place === null) return;
    const [x, y] = onTrack(place.track, state.bearing, place.mirrored);
    const turn = (place.mirrored ? -1 : 1) * state.bearing;
    this.lamp.style.transform = `translate(${x}px, ${y}px) translate(-50%, -50%) rotate(${turn}deg)`;
    this.lamp.setAttribute('aria-valuenow', String(Math.round(state.bearing)));
    this.lamp.setAttribute(
      'aria-valuetext',
      words.lamp.bearing(String(Math.round(state.bearing)), words.lamp.from(state.bearing)),
    );
  }

  private trackPath(place: { readonly track: Region; readonly mirrored: boolean }): string {
    const { x, y, width, height } = place.track;
    const [cx, cy] = [x + width / 2, y + height / 2];
    const marks = this.marks.map((bearing) => {
      const [mx, my] = onTrack(place.track, bearing, place.mirrored);
      const long = Math.hypot(mx - cx, my - cy);
      const [ux, uy] = [(mx - cx) / long, (my - cy) / long];
      return `M${(mx - 3 * ux).toFixed(1)} ${(my - 3 * uy).toFixed(1)}L${(mx + 3 * ux).toFixed(1)} ${(my + 3 * uy).toFixed(1)}`;
    });
    return `M${x} ${y}h${width}v${height}h${-width}z${marks.join('')}`;
  }
}
