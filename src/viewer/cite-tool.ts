/** Cite: the words for a footnote, with the address that opens the same view again. */
import type { StageData } from './stage-data.ts';
import type { PlateStage } from './stage.ts';
import type { Tool } from './tool-panels.ts';
import { formatViewState } from './view-address.ts';
import type { ViewState } from './view-state.ts';
import { words } from './words.ts';

/** The state with the digests that its pictures have now, so that a later change is noticed. */
export function datedState(data: StageData, state: ViewState): ViewState {
  const was = state.of.map((id) => data.views.find((v) => v.id === id)?.digest ?? '');
  return { ...state, was: was.filter((digest) => digest !== '') };
}

/** Views that a mode shows. */
function shownIds(state: ViewState): readonly string[] {
  return ['look', 'lamp', 'range'].includes(state.mode) ? state.of.slice(0, 1) : state.of;
}

/**
 * @param page Address of the page without its fragment. @param date Of reading, YYYY-MM-DD.
 */
export function citation(data: StageData, state: ViewState, page: string, date: string): string {
  const views = shownIds(state).map((id) => data.views.find((v) => v.id === id));
  const names = views.map((v) => v?.name ?? '').filter((n) => n !== '');
  const digests = views.map((v) => v?.digest ?? '').filter((d) => d !== '');
  const said = words.cite;
  const { region } = state;
  const shown = [
    data.credit,
    data.objectNumber,
    said.title(data.title),
    said.view(said.modes[state.mode], names.join(said.and)),
    region && said.region([region.x, region.y, region.width, region.height].join()),
    state.corrected && said.turned,
  ].filter((part) => part);
  const short = { ...datedState(data, state), of: shownIds(state) };
  const address = `${page}${formatViewState({ ...short, was: digests })}`;
  return `${shown.join(', ')}. ${said.picture(digests.join(said.and), date)} ${address}`;
}

/**
 * The code that shows the same view in a frame of another page.
 *
 * @param page Address of a page of the exhibit, absolute.
 */
export function embedCode(data: StageData, state: ViewState, page: string): string {
  const address = new URL(`${data.pages}${data.slug}/embed/`, page).href;
  const title = data.title.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  const src = `${address}${formatViewState(state)}`.replaceAll('&', '&amp;');
  return `<iframe src="${src}" title="${title}" width="100%" height="640" allowfullscreen loading="lazy"></iframe>`;
}

export class CiteTool implements Tool {
  private readonly stage: PlateStage;

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  opened(): void {
    this.stage.rested();
    this.write();
  }

  closed(): void {
    // Nothing is left behind.
  }

  moved(): void {
    this.write();
  }

  pressed(): boolean {
    return false;
  }

  private write(): void {
    const field = this.stage.querySelector<HTMLTextAreaElement>('[data-part="citation"]');
    if (field === null) return;
    const page = location.href.replace(/#.*$/, '');
    const today = new Date().toISOString().slice(0, 10);
    field.value = citation(this.stage.data, this.stage.state, page, today);
    const code = this.stage.querySelector<HTMLTextAreaElement>('[data-part="embedding"]');
    if (code) code.value = embedCode(this.stage.data, this.stage.state, page);
  }

  act(object: string): void {
    const part = { copy: 'citation', 'copy-embedding': 'embedding' }[object];
    if (part === undefined) return;
    this.write();
    const field = this.stage.querySelector<HTMLTextAreaElement>(`[data-part="${part}"]`);
    if (field === null) return;
    navigator.clipboard
      .writeText(field.value)
      .then(() => this.stage.say(words.cite.copied))
      .catch(() => {
        field.select();
        this.stage.say(words.cite.marked);
      });
  }
}
