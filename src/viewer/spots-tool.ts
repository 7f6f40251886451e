/**
 * Spots: the author's and the reader's own, as a list and on the plate while the list is open. A
 * new one is what is in sight, a rectangle between two presses, or an outline of presses: no
 * dragging is needed, and a button presses in the middle of the picture for the keyboard.
 */
import { fromAnnotations, toAnnotations, type OwnSpot } from './annotations.ts';
import { regionOnScreen, toPlate, toScreen } from './placing.ts';
import { outlineRegion, rectangleBetween, type Point } from './spot-shape.ts';
import { keptSpots, keepSpots } from './spot-store.ts';
import type { PlateStage } from './stage.ts';
import type { Tool } from './tool-panels.ts';
import { clipRegion, formatViewState, type Region } from './view-state.ts';

export class SpotsTool implements Tool {
  private readonly stage: PlateStage;
  private onPlate = false;
  private drawing: 'rectangle' | 'outline' | null = null;
  private points: Point[] = [];
  /** The outline has been closed, or the rectangle has both corners. */
  private shaped = false;

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
    this.draw(null);
    this.moved();
  }

  /** Begin a shape, or give it up. */
  private draw(what: 'rectangle' | 'outline' | null): void {
    this.drawing = what;
    this.points = [];
    this.shaped = false;
    const root = this.stage;
    for (const word of ['rectangle', 'outline'])
      root
        .querySelector(`[data-do="spots:${word}"]`)
        ?.setAttribute('aria-pressed', String(word === what));
    for (const word of ['middle', 'close']) {
      const button = root.querySelector<HTMLElement>(`[data-do="spots:${word}"]`);
      if (button) button.hidden = what === null || (word === 'close' && what !== 'outline');
    }
    if (what !== null)
      root.say(
        what === 'rectangle'
          ? 'Press two opposite corners on the picture.'
          : 'Press the corners of the outline one after the other, then “Close the outline”.',
      );
    this.moved();
  }

  pressed(x: number, y: number): boolean {
    const placing = this.stage.surfaces.placing();
    if (this.drawing === null || placing === null) return false;
    if (this.shaped) this.points = [];
    this.points.push(toPlate(placing, x, y));
    this.shaped = this.drawing === 'rectangle' && this.points.length === 2;
    if (this.shaped) this.stage.say('The rectangle is drawn. Give it a title and keep it.');
    this.moved();
    return true;
  }

  private close(): void {
    if (this.points.length < 3) return this.stage.say('An outline needs three corners or more.');
    this.shaped = true;
    this.stage.say('The outline is drawn. Give it a title and keep it.');
    this.moved();
  }

  /** The region to keep, and its outline where it is not a rectangle. */
  private shape(): { readonly region: Region | null; readonly outline?: readonly Point[] } {
    const { frame } = this.stage.data;
    if (this.drawing === 'rectangle' && this.shaped)
      return { region: clipRegion(rectangleBetween(this.points[0], this.points[1]), frame) };
    if (this.drawing === 'outline' && this.shaped)
      return {
        region: clipRegion(outlineRegion(this.points), frame),
        outline: this.points.map(([x, y]) => [Math.round(x), Math.round(y)] as const),
      };
    const seen = this.stage.surfaces.region();
    return { region: seen === null ? null : clipRegion(seen, frame) };
  }

  act(object: string, button: HTMLElement): void {
    const { width, height } = this.stage.surfaces.box();
    if (object === 'mark') this.mark();
    else if (object === 'rectangle' || object === 'outline')
      this.draw(this.drawing === object ? null : object);
    else if (object === 'middle') this.pressed(width / 2, height / 2);
    else if (object === 'close') this.close();
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

  /** Keep the shape, or what is in sight, as a spot. */
  private mark(): void {
    const { stage } = this;
    if (this.drawing !== null && !this.shaped)
      return stage.say('The shape is not finished: press the rest of it, or choose it off.');
    const { region, outline } = this.shape();
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
        ...(outline === undefined ? {} : { outline }),
        made: new Date().toISOString(),
      },
    ]);
    title.value = note.value = '';
    this.draw(null);
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
    const shapes =
      !this.onPlate || placing === null
        ? []
        : [...this.stage.data.spots, ...this.own].map((spot) => {
            const outline = 'outline' in spot ? spot.outline : undefined;
            if (outline !== undefined)
              return pathOf(
                outline.map((p) => toScreen(placing, ...p)),
                true,
              );
            const r = regionOnScreen(placing, spot.region);
            return `M${r.x} ${r.y}h${r.width}v${r.height}h${-r.width}z`;
          });
    if (this.onPlate && placing !== null && this.points.length > 0) {
      const places = this.points.map((p) => toScreen(placing, ...p));
      shapes.push(...places.map(([x, y]) => `M${x - 7} ${y}h14M${x} ${y - 7}v14`));
      if (this.drawing === 'rectangle' && this.shaped) {
        const r = regionOnScreen(placing, rectangleBetween(this.points[0], this.points[1]));
        shapes.push(`M${r.x} ${r.y}h${r.width}v${r.height}h${-r.width}z`);
      } else shapes.push(pathOf(places, this.shaped));
    }
    for (const stroke of this.stage.parts.overlay.querySelectorAll('[data-draw="spots"]'))
      stroke.setAttribute('d', shapes.join(''));
  }
}

function pathOf(places: readonly (readonly [number, number])[], closed: boolean): string {
  const line = places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
  return closed ? `${line}z` : line;
}
