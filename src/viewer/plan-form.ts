/**
 * `<set-up-planner>`: works out the plan again in the reader's browser, from the same function
 * that made the page. Without it the page shows the worked example.
 */
import { plannedDrawings } from '../components/planner/scenes.ts';
import { resultsHtml } from '../components/planner/results.ts';
import { setupsYaml } from '../components/planner/setups-yaml.ts';
import type { PlanSpeech } from '../components/planner/plan-value.ts';
import {
  exampleInput,
  faultyFields,
  planLimits,
  type PlanField,
  type PlanInput,
} from '../optics/plan/plan-input.ts';
import { planSetUp } from '../optics/plan/plan-set-up.ts';
import { plannerSpeech } from './planner-speech.ts';

let speech: PlanSpeech;

export class SetUpPlanner extends HTMLElement {
  private timer = 0;

  connectedCallback(): void {
    this.querySelector('[data-part="form"]')?.removeAttribute('hidden');
    this.querySelector('[data-part="alone"]')?.setAttribute('hidden', '');
    for (const field of this.fields()) field.disabled = false;
    this.addEventListener('input', () => {
      clearTimeout(this.timer);
      this.timer = window.setTimeout(() => this.work(), 120);
    });
    this.querySelector('[data-do="print"]')?.addEventListener('click', () => print());
    // A browser that comes back to the page fills in what was written before.
    if (this.fields().some((field) => field.value !== field.defaultValue)) this.work();
  }

  disconnectedCallback(): void {
    clearTimeout(this.timer);
  }

  private fields(): HTMLInputElement[] {
    return [...this.querySelectorAll<HTMLInputElement>('input[name]')];
  }

  private input(): PlanInput {
    const given = Object.fromEntries(
      this.fields()
        .filter(({ name }) => Object.hasOwn(planLimits, name))
        .map(({ name, value }) => [name, value === '' ? NaN : Number(value)]),
    );
    return { ...exampleInput, ...given };
  }

  private work(): void {
    const input = this.input();
    const faulty = faultyFields(input);
    for (const field of this.fields()) {
      const wrong = faulty.includes(field.name as PlanField);
      if (wrong) field.setAttribute('aria-invalid', 'true');
      else field.removeAttribute('aria-invalid');
    }
    if (faulty.length > 0) {
      this.say(speech.words.faulty(faulty.map((field) => speech.words.fields[field])));
      return;
    }
    try {
      const plan = planSetUp(input);
      const techniques = this.getAttribute('techniques') ?? '';
      this.put('results', resultsHtml(plan, techniques, speech));
      this.put('drawings', plannedDrawings(plan, input, speech));
      const yaml = this.querySelector('[data-part="setups"]');
      if (yaml) yaml.textContent = setupsYaml(plan);
      this.say(speech.words.warningsCount(plan.warnings.length));
    } catch (fault) {
      this.say(fault instanceof Error ? fault.message : String(fault));
    }
  }

  private put(part: string, html: string): void {
    const place = this.querySelector(`[data-part="${part}"]`);
    if (place === null) return;
    const open = [...place.querySelectorAll('details')].map((details) => details.open);
    place.innerHTML = html;
    place.querySelectorAll('details').forEach((details, i) => {
      details.open = open[i] ?? false;
    });
  }

  private say(text: string): void {
    const said = this.querySelector('[data-part="said"]');
    if (said) said.textContent = text;
  }
}

void plannerSpeech(document.documentElement.lang).then((found) => {
  speech = found;
  if (!customElements.get('set-up-planner')) customElements.define('set-up-planner', SetUpPlanner);
});
