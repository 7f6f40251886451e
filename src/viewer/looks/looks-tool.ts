/** Guided looks in the stage: a paragraph at a time, with large type for a class. */
import type { PlateStage } from '../stage.ts';
import type { Tool } from '../tool-panels.ts';
import { words } from '../words.ts';

export class LooksTool implements Tool {
  private readonly stage: PlateStage;
  private look = 0;
  private step = 0;
  private readonly onKey = (event: KeyboardEvent) => this.key(event);

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  opened(): void {
    this.stage.addEventListener('keydown', this.onKey);
    this.go(0);
  }

  closed(): void {
    this.stage.removeEventListener('keydown', this.onKey);
    this.forClass(false);
  }

  moved(): void {
    // The reader may look around; the step stays.
  }

  pressed(): boolean {
    return false;
  }

  act(object: string): void {
    if (object === 'next') this.go(this.step + 1);
    else if (object === 'back') this.go(this.step - 1);
    else if (object === 'again') this.go(this.step);
    else if (object === 'class') this.forClass(this.stage.dataset['class'] === undefined);
  }

  set(field: string, value: string): void {
    if (field !== 'look') return;
    this.look = Number(value);
    this.go(0);
  }

  /** Page keys turn the steps, wherever the focus is in the stage. */
  private key(event: KeyboardEvent): void {
    const by = { PageDown: 1, PageUp: -1 }[event.key];
    if (by === undefined || (event.target as Element).closest('input, select, textarea')) return;
    event.preventDefault();
    event.stopPropagation();
    this.go(this.step + by);
  }

  private go(step: number): void {
    const look = this.stage.data.looks[this.look];
    if (look === undefined) return;
    this.step = Math.min(look.steps.length - 1, Math.max(0, step));
    const { text, lang, state } = look.steps[this.step];
    const say = (part: string, sentence: string, language?: string) => {
      const place = this.stage.querySelector<HTMLElement>(`[data-part="${part}"]`);
      if (!place) return;
      place.textContent = sentence;
      if (language) place.lang = language;
      else place.removeAttribute('lang');
    };
    say('look-step', words.looks.step(this.step + 1, look.steps.length));
    say('look-text', text, lang);
    const able = (what: string, on: boolean) => {
      const button = this.stage.querySelector<HTMLButtonElement>(`[data-do="looks:${what}"]`);
      button?.setAttribute('aria-disabled', String(!on));
    };
    able('back', this.step > 0);
    able('next', this.step < look.steps.length - 1);
    this.stage.show(state);
  }

  /** Large type on the whole screen, for a projector. */
  private forClass(on: boolean): void {
    const { stage } = this;
    if (on === (stage.dataset['class'] !== undefined)) return;
    if (on) stage.dataset['class'] = '';
    else delete stage.dataset['class'];
    stage.querySelector('[data-do="looks:class"]')?.setAttribute('aria-pressed', String(on));
    if (on && document.fullscreenElement === null)
      stage.requestFullscreen().catch(() => stage.say(words.faults.noScreen));
    if (!on && document.fullscreenElement === stage) void document.exitFullscreen();
  }
}
