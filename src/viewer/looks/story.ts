/**
 * A guided look as a story: the plate stays at the top of the window while the paragraphs pass
 * below it, and shows what the paragraph in the middle speaks of. The list is complete without.
 */
import type { PlateStage } from '../stage.ts';

export function followStories(stage: PlateStage): void {
  for (const list of document.querySelectorAll<HTMLElement>('[data-look]')) {
    const button = list.querySelector<HTMLButtonElement>('button[data-follow]');
    if (button === null) continue;
    button.hidden = false;
    new Story(stage, list, button);
  }
}

class Story {
  private readonly stage: PlateStage;
  private readonly list: HTMLElement;
  private readonly button: HTMLButtonElement;
  private readonly watch: IntersectionObserver;
  private on = false;
  private readonly onKey = (event: KeyboardEvent) => this.key(event);

  constructor(stage: PlateStage, list: HTMLElement, button: HTMLButtonElement) {
    this.stage = stage;
    this.list = list;
    this.button = button;
    // The strip of the window, below the plate, in which a paragraph counts as being read.
    this.watch = new IntersectionObserver((entries) => this.seen(entries), {
      rootMargin: '-60% 0px -35% 0px',
    });
    button.addEventListener('click', () => this.toggle());
  }

  private get steps(): readonly HTMLElement[] {
    return [...this.list.querySelectorAll<HTMLElement>('[data-step]')];
  }

  /** Page keys go by steps: a whole window further would leave words under the plate. */
  private key(event: KeyboardEvent): void {
    const by = { PageDown: 1, PageUp: -1 }[event.key];
    const within = (event.target as Element).closest?.('plate-stage, input, select, textarea');
    if (by === undefined || within) return;
    const { steps } = this;
    const now = steps.findIndex((step) => step.hasAttribute('aria-current'));
    const next = steps[now + by];
    if (next === undefined) return;
    event.preventDefault();
    next.scrollIntoView({ block: 'start' });
  }

  private toggle(): void {
    this.on = !this.on;
    this.button.setAttribute('aria-pressed', String(this.on));
    const root = document.documentElement;
    if (this.on) {
      for (const other of document.querySelectorAll<HTMLElement>(
        'button[data-follow][aria-pressed="true"]',
      ))
        if (other !== this.button) other.click();
      root.dataset['story'] = '';
      this.list.dataset['following'] = '';
      for (const step of this.steps) this.watch.observe(step);
      addEventListener('keydown', this.onKey);
      this.list.scrollIntoView({ block: 'start' });
      this.mark(this.steps[0]);
    } else {
      this.watch.disconnect();
      removeEventListener('keydown', this.onKey);
      delete root.dataset['story'];
      delete this.list.dataset['following'];
    }
  }

  private seen(entries: readonly IntersectionObserverEntry[]): void {
    const step = entries.find((entry) => entry.isIntersecting)?.target as HTMLElement | undefined;
    this.mark(step);
  }

  /** The step that is being read. */
  private mark(step: HTMLElement | undefined): void {
    if (step === undefined) return;
    for (const other of this.steps)
      if (other === step) other.setAttribute('aria-current', 'step');
      else other.removeAttribute('aria-current');
    this.stage.show(step.dataset['step'] ?? '');
  }
}
