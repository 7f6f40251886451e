/**
 * Says what is being waited for when it takes long, once for each wait, and takes the sentence
 * back when all is there.
 */
import type { PlateStage } from './stage.ts';
import { words } from './words.ts';

/** Milliseconds after which a wait is worth a sentence. */
const long = 4000;
const again = 1000;

export class WaitingWatch {
  private readonly stage: PlateStage;
  private readonly complete: () => boolean;
  private timer = 0;

  constructor(stage: PlateStage, complete: () => boolean) {
    this.stage = stage;
    this.complete = complete;
  }

  /** Something new has been asked for. */
  begin(): void {
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.look(true), long);
  }

  /** Nothing more will come. */
  end(): void {
    clearTimeout(this.timer);
  }

  private look(first: boolean): void {
    const { said } = this.stage.parts;
    if (this.complete()) {
      if (said.textContent === words.picture.waiting) this.stage.say('');
      return;
    }
    if (!this.stage.isConnected) return;
    if (first) this.stage.say(words.picture.waiting);
    this.timer = window.setTimeout(() => this.look(false), again);
  }
}
