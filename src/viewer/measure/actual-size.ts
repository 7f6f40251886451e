/** The plate at its actual size on this screen, once the reader has told the screen's size. */
import type { PlateStage } from '../stage.ts';
import { frameOf } from '../view-state.ts';
import { cardWidth, keepScreenScale, screenScale } from './screen-size.ts';

export class ActualSize {
  private readonly stage: PlateStage;

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  opened(): void {
    const known = screenScale();
    const input = this.stage.querySelector<HTMLInputElement>('[data-set="card"]');
    if (input && known !== null) input.value = String(Math.round(known * cardWidth));
    this.drawCard(Number(input?.value ?? 320));
  }

  act(object: string): void {
    const times = { 'actual-1': 1, 'actual-10': 10 }[object];
    if (times !== undefined) this.show(times);
    if (object === 'card') {
      const input = this.stage.querySelector<HTMLInputElement>('[data-set="card"]');
      const scale = keepScreenScale(Number(input?.value ?? 0));
      this.stage.say(
        `Kept in this browser: ${scale.toFixed(2)} pixels a millimetre on this screen.`,
      );
    }
  }

  set(field: string, value: string): void {
    if (field === 'card') this.drawCard(Number(value));
  }

  private drawCard(pixels: number): void {
    const line = this.stage.querySelector<HTMLElement>('[data-part="card"]');
    if (line) line.style.width = `${pixels}px`;
  }

  private show(times: number): void {
    const { stage } = this;
    const screen = screenScale();
    const frame = frameOf(stage.data, stage.state.mode, stage.state.of);
    const placing = stage.surfaces.placing();
    if (frame.pixelsPerMillimetre === null)
      return stage.say('The scale of this picture is not known, so its actual size is not either.');
    if (screen === null)
      return stage.say('Tell the size of this screen first: make the line as wide as a bank card.');
    if (placing === null) return;
    stage.surfaces.zoom((times * screen) / (placing.scale * frame.pixelsPerMillimetre));
    stage.say(
      times === 1
        ? 'Shown at its actual size on this screen.'
        : `Shown ${times} times as large as it is, on this screen.`,
    );
  }
}
