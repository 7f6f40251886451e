/** Spots: the author's and the reader's own, as a list and, when asked, on the plate. */
import { fromAnnotations, toAnnotations, type OwnSpot } from './annotations.ts';
import { regionOnScreen } from './placing.ts';
import { keptSpots, keepSpots } from './spot-store.ts';
import type { PlateStage } from './stage.ts';
import type { Tool } from './tool-panels.ts';
import { clipRegion, formatViewState, type Region } from './view-state.ts';

export class SpotsTool implements Tool {
  private readonly stage: PlateStage;
  private onPlate = false;

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  private get own(): OwnSpot[] {
    return keptSpots(this.stage.data.slug);
  }

  opened(): void {
    this.onPlate = true;
    void this.stage.use().then(() => this.moved());
    this.list();
    const file = this.stage.querySelector<HTMLInputElement>('[data-part="spots-file"]');
    if (file) file.onchange = () => void this.take(file);
  }

  closed(): void {
    this.onPlate = false;
    this.moved();
  }

  pressed(): boolean {
    return false;
  }

  act(object: string, button: HTMLElement): void {
    if (object === 'mark') this.mark();
    else if (object === 'save') this.save();
    else if (object === 'go') this.go(button.dataset['spot'] ?? '', button.dataset['region'] ?? '');
    else if (object === 'drop') {
      keepSpots(
        this.stage.data.slug,
        this.own.filter((s) => s.id !== button.dataset['spot']),
      );
      this.list();
      this.moved();
    }
  }

  /** Keep what is in sight as a spot: no drawing of a rectangle, so no dragging is needed. */
  private mark(): void {
    const { stage } = this;
    const seen = stage.surfaces.region();
    const region = seen === null ? null : clipRegion(seen, stage.data.frame);
    const title = stage.querySelector<HTMLInputElement>('[data-part="spot-title"]');
    const note = stage.querySelector<HTMLTextAreaElement>('[data-part="spot-note"]');
    if (region === null || title === null || note === null) return;
    if (title.value.trim() === '') {
      stage.say('Give the spot a title first.');
      title.focus();
      return;
    }
    const kept = keepSpots(stage.data.slug, [
      ...this.own,
      {
        id: `own-${Date.now().toString(36)}`,
        title: title.value.trim(),
        note: note.value.trim(),
        view: stage.state.of[0],
        region,
        made: new Date().toISOString(),
      },
    ]);
    title.value = note.value = '';
    stage.say(kept ? 'Kept in this browser only.' : 'This browser does not keep anything here.');
    this.list();
    this.moved();
  }

  private go(spot: string, region: string): void {
    const [x, y, width, height] = region.split(',').map(Number);
    const place = { x, y, width, height };
    const authors = this.stage.data.spots.some((s) => s.id === spot);
    this.stage.change({ region: place, spot: authors ? spot : null });
    void this.stage.use().then(() => this.stage.surfaces.fit(place, false));
  }

  private save(): void {
    const page = location.href.replace(/#.*$/, '');
    const text = JSON.stringify(toAnnotations(this.stage.data, this.own, page), null, 2);
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type: 'application/ld+json' }));
    link.download = `${this.stage.data.slug}-spots.jsonld`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  }

  private async take(input: HTMLInputElement): Promise<void> {
    const file = input.files?.[0];
    if (file === undefined) return;
    const found = fromAnnotations(await file.text(), this.stage.data);
    input.value = '';
    if (!found.ok) return this.stage.say(found.reason);
    const fresh = found.value.filter((s) => !this.own.some((o) => o.id === s.id));
    keepSpots(this.stage.data.slug, [...this.own, ...fresh]);
    this.stage.say(`${fresh.length} of ${found.value.length} spots were new and are kept.`);
    this.list();
    this.moved();
  }

  private list(): void {
    const list = this.stage.querySelector('[data-part="spot-list"]');
    if (list === null) return;
    const { data } = this.stage;
    const rows = [
      ...data.spots.map((s) => ({ ...s, own: false })),
      ...this.own.map((s) => ({ ...s, own: true })),
    ].map((spot) => this.row(spot));
    list.replaceChildren(...rows);
    const none = this.stage.querySelector<HTMLElement>('[data-part="no-spots"]');
    if (none) none.hidden = rows.length > 0;
  }

  private row(spot: {
    id: string;
    title: string;
    note: string | null;
    view: string | null;
    region: Region;
    own: boolean;
  }): HTMLElement {
    const item = document.createElement('li');
    const { x, y, width, height } = spot.region;
    const button = (words: string, what: string) => {
      const made = document.createElement('button');
      made.type = 'button';
      made.textContent = words;
      made.dataset['do'] = `spots:${what}`;
      made.dataset['spot'] = spot.id;
      made.dataset['region'] = `${x},${y},${width},${height}`;
      return made;
    };
    item.append(button(spot.title, 'go'));
    if (spot.note)
      item.append(Object.assign(document.createElement('span'), { textContent: spot.note }));
    const link = document.createElement('a');
    link.textContent = 'Address';
    link.setAttribute('aria-label', `Address of the spot ${spot.title}`);
    link.href = formatViewState({
      ...this.stage.state,
      mode: 'look',
      of: [spot.view ?? this.stage.state.of[0]],
      region: spot.region,
      spot: spot.own ? null : spot.id,
    });
    item.append(link);
    if (spot.own) item.append(button(`Remove “${spot.title}”`, 'drop'));
    return item;
  }

  /** Outline the spots on the plate while the list is open. */
  moved(): void {
    const placing = this.stage.surfaces.placing();
    const all = [...this.stage.data.spots, ...this.own];
    const path =
      !this.onPlate || placing === null
        ? ''
        : all
            .map((s) => regionOnScreen(placing, s.region))
            .map((r) => `M${r.x} ${r.y}h${r.width}v${r.height}h${-r.width}z`)
            .join('');
    for (const stroke of this.stage.parts.overlay.querySelectorAll('[data-draw="spots"]'))
      stroke.setAttribute('d', path);
  }
}
