/**
 * `<turning-section>`: ties the drawing of a lesson to the plate beside it. Its slider turns both;
 * the plate's own controls turn the drawing too.
 */
import { turningSvg } from '../components/lessons/turning-drawing.ts';
import { PlateStage } from './stage.ts';
import { defineSpoken, measures, words } from './words.ts';

export class TurningSection extends HTMLElement {
  private stage: PlateStage | null = null;
  private readonly follow = () => this.draw();

  connectedCallback(): void {
    const stage = document.getElementById(this.dataset['stage'] ?? '');
    // The plate comes after the drawing in the page: its element may not be ready yet.
    if (!(stage instanceof PlateStage) || stage.state === undefined) {
      if (document.readyState === 'loading') {
        document.addEventListener('DOMContentLoaded', () => this.connectedCallback(), {
          once: true,
        });
      }
      return;
    }
    this.stage = stage;
    stage.addEventListener('stage-change', this.follow);
    this.querySelector('[data-part="control"]')?.removeAttribute('hidden');
    this.slider?.addEventListener('input', () => {
      const tilt = Number(this.slider?.value ?? 0);
      const { data } = stage;
      const of = data.pair ? [data.pair.positive, data.pair.negative] : stage.state.of;
      stage.change({ mode: 'tilt', of, tilt });
    });
    this.offerWholeScreen();
    this.draw();
  }

  disconnectedCallback(): void {
    this.stage?.removeEventListener('stage-change', this.follow);
  }

  /** Drawing, control and plate together, for a class; not every browser can. */
  private offerWholeScreen(): void {
    const button = this.querySelector<HTMLButtonElement>('[data-part="screen"]');
    const section = this.closest('section');
    if (!button || !section || !document.fullscreenEnabled) return;
    button.hidden = false;
    button.addEventListener('click', () => {
      const leave = document.fullscreenElement === section;
      void (leave ? document.exitFullscreen() : section.requestFullscreen());
    });
    section.addEventListener('fullscreenchange', () => {
      button.setAttribute('aria-pressed', String(document.fullscreenElement === section));
    });
  }

  private get slider(): HTMLInputElement | null {
    return this.querySelector('input');
  }

  private draw(): void {
    if (this.stage === null) return;
    const { tilt, room } = this.stage.state;
    const degrees = `${measures.fixed(tilt, 1)}°`;
    const place = this.querySelector('[data-part="drawing"]');
    if (place) {
      place.innerHTML = `<figure class="single"><div>${turningSvg(tilt, room, words.turning)}</div><figcaption>${words.turning.tilt(degrees)}</figcaption></figure>`;
    }
    if (this.slider) {
      this.slider.value = String(tilt);
      this.slider.setAttribute('aria-valuetext', degrees);
    }
    const said = this.querySelector('[data-part="said"]');
    if (said) said.textContent = degrees;
  }
}

defineSpoken('turning-section', TurningSection);
