/**
 * Spots: the author's and the reader's own, as a list and on the plate while the list is open. A
 * new one is what is in sight, a rectangle between two presses, or an outline of presses: no
 * dragging is needed, and a button presses in the middle of the picture for the keyboard.
 */
import { toPlate } from '../placing.ts';
import type { PlateStage } from '../stage.ts';
import { download } from '../take/download.ts';
import type { Tool } from '../tool-panels.ts';
import { formatViewState } from '../view-address.ts';
import { clipRegion } from '../view-state.ts';
import { fromAnnotations, largestFile, toAnnotations, type OwnSpot } from './annotations.ts';
import { ShapeDrawing, type Shape, type ShapeKind } from './shape-drawing.ts';
import { drawingPath, spotPath } from './spot-path.ts';
import { spotRow } from './spot-row.ts';
import { keepSpots, keptSpots } from './spot-store.ts';
import { words } from '../words.ts';

export class SpotsTool implements Tool {
  private readonly stage: PlateStage;
  private onPlate = false;
  private drawing: ShapeDrawing | null = null;

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  private get own(): OwnSpot[] {
    return keptSpots(this.stage.data.slug);
  }

  /** @returns Whether the browser keeps it. */
  private keep(spots: readonly OwnSpot[]): boolean {
    const kept = keepSpots(this.stage.data.slug, spots);
    this.list();
    this.moved();
    return kept;
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
  private draw(what: ShapeKind | null): void {
    this.drawing = what === null ? null : new ShapeDrawing(what);
    const button = (word: string) =>
      this.stage.querySelector<HTMLElement>(`[data-do="spots:${word}"]`);
    for (const word of ['rectangle', 'outline'])
      button(word)?.setAttribute('aria-pressed', String(word === what));
    for (const word of ['middle', 'close']) {
      const found = button(word);
      if (found) found.hidden = what === null || (word === 'close' && what !== 'outline');
    }
    if (what !== null) this.stage.say(words.spots.begin[what]);
    this.moved();
  }

  pressed(x: number, y: number): boolean {
    const placing = this.stage.surfaces.placing();
    const { drawing } = this;
    if (drawing === null || placing === null) return false;
    drawing.press(toPlate(placing, x, y));
    if (drawing.finished) this.stage.say(words.spots.drawn[drawing.kind]);
    this.moved();
    return true;
  }

  private close(): void {
    if (this.drawing === null) return;
    this.stage.say(this.drawing.close() ? words.spots.drawn[this.drawing.kind] : words.spots.three);
    this.moved();
  }

  act(object: string, button: HTMLElement): void {
    const { width, height } = this.stage.surfaces.box();
    if (object === 'mark') this.mark();
    else if (object === 'rectangle' || object === 'outline')
      this.draw(this.drawing?.kind === object ? null : object);
    else if (object === 'middle') this.pressed(width / 2, height / 2);
    else if (object === 'close') this.close();
    else if (object === 'save') this.save();
    else if (object === 'go') this.go(button.dataset['spot'] ?? '', button.dataset['region'] ?? '');
    else if (object === 'drop') this.keep(this.own.filter((s) => s.id !== button.dataset['spot']));
  }

  /** What is drawn, or what is in sight. */
  private shape(): Shape {
    const { frame } = this.stage.data;
    if (this.drawing !== null) return this.drawing.shape(frame);
    const seen = this.stage.surfaces.region();
    return { region: seen === null ? null : clipRegion(seen, frame) };
  }

  /** Keep the shape, or what is in sight, as a spot. */
  private mark(): void {
    const { stage } = this;
    if (this.drawing?.finished === false) return stage.say(words.spots.unfinished);
    const { region, outline } = this.shape();
    const title = stage.querySelector<HTMLInputElement>('[data-part="spot-title"]');
    const note = stage.querySelector<HTMLTextAreaElement>('[data-part="spot-note"]');
    if (region === null || title === null || note === null) return;
    if (title.value.trim() === '') {
      stage.say(words.spots.title);
      title.focus();
      return;
    }
    const made: OwnSpot = {
      id: `own-${Date.now().toString(36)}`,
      title: title.value.trim(),
      note: note.value.trim(),
      view: stage.state.of[0],
      region,
      ...(outline === undefined ? {} : { outline }),
      made: new Date().toISOString(),
    };
    title.value = note.value = '';
    this.draw(null);
    stage.say(this.keep([...this.own, made]) ? words.spots.kept : words.spots.notKept);
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
    const file = new Blob([text], { type: 'application/ld+json' });
    download(`${this.stage.data.slug}-spots.jsonld`, file);
  }

  private async take(input: HTMLInputElement): Promise<void> {
    const file = input.files?.[0];
    if (file === undefined) return;
    const { stage } = this;
    const found =
      file.size > largestFile
        ? { ok: false as const, reason: words.spots.tooLarge }
        : fromAnnotations(await file.text(), stage.data);
    input.value = '';
    if (!found.ok) return stage.say(found.reason);
    const { own } = this;
    const fresh = found.value.filter((s) => !own.some((o) => o.id === s.id));
    const kept = this.keep([...own, ...fresh]);
    stage.say(kept ? words.spots.taken(fresh.length, found.value.length) : words.spots.notKept);
  }

  private list(): void {
    const list = this.stage.querySelector('[data-part="spot-list"]');
    if (list === null) return;
    const { data, state } = this.stage;
    const rows = [
      ...data.spots.map((s) => ({ ...s, own: false })),
      ...this.own.map((s) => ({ ...s, own: true })),
    ].map((spot) => {
      const of = [spot.view ?? state.of[0]];
      const id = spot.own ? null : spot.id;
      const { region } = spot;
      return spotRow(spot, formatViewState({ ...state, mode: 'look', of, region, spot: id }));
    });
    list.replaceChildren(...rows);
    const none = this.stage.querySelector<HTMLElement>('[data-part="no-spots"]');
    if (none) none.hidden = rows.length > 0;
  }

  /** Outline the spots on the plate while the list is open. */
  moved(): void {
    const placing = this.onPlate ? this.stage.surfaces.placing() : null;
    const spots = placing === null ? [] : [...this.stage.data.spots, ...this.own];
    const paths = spots.map((spot) => spotPath(placing!, spot));
    if (placing !== null && this.drawing !== null) paths.push(drawingPath(placing, this.drawing));
    for (const stroke of this.stage.parts.overlay.querySelectorAll('[data-draw="spots"]'))
      stroke.setAttribute('d', paths.join(''));
  }
}
