/** The plate at its actual size on this screen, once the reader has told the screen's size. */
import type { PlateStage } from '../stage.ts';
import { frameOf } from '../view-state.ts';
import { cardWidth, keepScreenScale, screenScale } from './screen-size.ts';
import { measures, words } from '../words.ts';

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
      this.stage.say(words.measure.keptScreen(measures.fixed(scale, 2)));
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
    if (frame.pixelsPerMillimetre === null) return stage.say(words.measure.noActual);
    if (screen === null) return stage.say(words.measure.tellScreen);
    if (placing === null) return;
    stage.surfaces.zoom((times * screen) / (placing.scale * frame.pixelsPerMillimetre));
    stage.say(times === 1 ? words.measure.actual : words.measure.times(times));
  }
}
