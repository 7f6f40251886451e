/**
 * Beside with another plate: its views, and how its pixels correspond to this plate's at the
 * same physical scale. What is known of the other plate is fetched when it is chosen.
 */
import type { StageData, StageView } from './stage-data.ts';
import type { PlateStage } from './stage.ts';
import type { Link } from './surface.ts';
import { words } from './words.ts';

interface Listed {
  readonly slug: string;
  readonly title: string;
}

async function fetched<T>(address: string): Promise<T> {
  const answer = await fetch(address).catch(() => null);
  if (answer === null || !answer.ok) throw new Error(words.faults.otherPlate);
  return (await answer.json()) as T;
}

export class OtherPlate {
  private readonly stage: PlateStage;
  private data: StageData | null = null;
  private listing: Promise<void> | null = null;

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  /** The second picture, when it is another plate's. */
  get view(): StageView | null {
    const { data } = this;
    const { state } = this.stage;
    if (state.with === null || data?.slug !== state.with) return null;
    const own = data.views.find((v) => v.id === state.withView);
    return own ?? data.views.find((v) => v.id === data.pair?.positive) ?? data.views[0] ?? null;
  }

  /** What stands under the second picture when it is another plate's. */
  get name(): string | null {
    const { view, data } = this;
    return view === null || data === null ? null : `${data.title}: ${view.name}`;
  }

  async prepare(): Promise<void> {
    void this.list();
    const slug = this.stage.state.with;
    if (slug === null || this.data?.slug === slug) return;
    this.data = null;
    this.data = await fetched<StageData>(`${this.stage.data.pages}${slug}/stage.json`).catch(() => {
      this.stage.state = { ...this.stage.state, with: null, withView: null };
      throw new Error(words.faults.noPlate(slug));
    });
    this.stage.say(this.scaleWords());
  }

  /** Pixels of the other plate for one of this plate; null where a scale is not known. */
  private get sameScale(): number | null {
    const mine = this.stage.data.frame.pixelsPerMillimetre;
    const theirs = this.view?.registered ? this.data?.frame.pixelsPerMillimetre : null;
    return mine && theirs ? theirs / mine : null;
  }

  private scaleWords(): string {
    return this.sameScale === null ? words.picture.notSameScale : words.picture.sameScale;
  }

  /** How the two surfaces correspond; none within one plate. */
  link(firstFollows: boolean): Link | undefined {
    const { data, view } = this;
    if (data === null || view === null) return undefined;
    const { frame } = this.stage.data;
    const mine = [frame.width / 2, frame.height / 2] as const;
    const theirs = [view.width / 2, view.height / 2] as const;
    const ratio = this.sameScale ?? view.width / frame.width;
    return firstFollows
      ? { ratio: 1 / ratio, mine, theirs }
      : { ratio, mine: theirs, theirs: mine };
  }

  /** Fill the list of plates, once. */
  private list(): Promise<void> {
    this.listing ??= fetched<Listed[]>(`${this.stage.data.pages}stages.json`)
      .then((plates) => {
        const select = this.stage.querySelector<HTMLSelectElement>('select[data-set="with"]');
        for (const { slug, title } of plates)
          if (slug !== this.stage.data.slug) select?.append(new Option(title, slug));
        this.reflect();
      })
      .catch(() => {
        this.listing = null;
      });
    return this.listing;
  }

  reflect(): void {
    const { stage, data } = this;
    if (stage.state.mode !== 'beside') return;
    const chooser = stage.querySelector<HTMLSelectElement>('select[data-set="with"]');
    if (chooser) chooser.value = stage.state.with ?? '';
    const views = stage.querySelector<HTMLSelectElement>('select[data-part="right-view"]');
    if (views === null) return;
    const offered = stage.state.with === null || data === null ? stage.data.views : data.views;
    const key = `${stage.state.with} ${offered.length}`;
    if (views.dataset['key'] !== key) {
      views.replaceChildren(...offered.map((v) => new Option(v.name, v.id)));
      views.dataset['key'] = key;
    }
    views.dataset['set'] = stage.state.with === null ? 'second' : 'withView';
    const chosen = this.view?.id ?? stage.state.of[1];
    if (chosen !== undefined) views.value = chosen;
  }
}
