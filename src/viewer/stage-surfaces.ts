/**
 * The moving pictures of a stage: one surface for one place, more where pictures are shown
 * beside each other. Opened on first use over the still pictures, and kept.
 */
import { distanceFrom, lineFor } from './divider-place.ts';
import type { Line } from './divider-line.ts';
import { laidFor, type Laid } from './laid-views.ts';
import type { Placing } from './placing.ts';
import type { PlateStage } from './stage.ts';
import type { Link, Surface, SurfaceEvents } from './surface.ts';
import { stageKey } from './stage-keys.ts';
import type { Region } from './view-state.ts';
import { WaitingWatch } from './waiting-watch.ts';
import { words } from './words.ts';

type Opened = (element: HTMLElement, name: string, events: SurfaceEvents) => Surface;

export class StageSurfaces {
  /** In the order of the markup: the first is always there, the others when needed. */
  private readonly all: Surface[] = [];
  private readonly stage: PlateStage;
  private openSurface: Opened | null = null;
  private opening: Promise<void> | null = null;
  private leading: Surface | null = null;
  private shownKey = '';
  private readonly waiting: WaitingWatch;

  constructor(stage: PlateStage) {
    this.stage = stage;
    this.waiting = new WaitingWatch(stage, () => {
      const shown = this.all.slice(0, this.together);
      return shown.length === this.together && shown.every((surface) => surface.complete);
    });
  }

  get first(): Surface | null {
    return this.all[0] ?? null;
  }

  get second(): Surface | null {
    return this.all[1] ?? null;
  }

  get third(): Surface | null {
    return this.all[2] ?? null;
  }

  /** Open what is needed, then show the stage's state. */
  async show(): Promise<void> {
    this.waiting.begin();
    try {
      this.opening ??= this.open();
      await this.opening;
    } catch (fault) {
      this.opening = null;
      this.waiting.end();
      throw fault;
    }
    await this.lay().catch((fault: unknown) => {
      this.waiting.end();
      throw fault;
    });
  }

  private async open(): Promise<void> {
    this.stage.dataset['opening'] = 'now';
    const { openSurface } = await import('./osd.ts');
    this.openSurface = openSurface;
    this.stage.parts.surfaces.hidden = false;
    this.need(1);
    delete this.stage.dataset['opening'];
  }

  /** A surface is opened when it is first in sight: the library takes its size from the element. */
  private need(count: number): void {
    const { parts, data } = this.stage;
    const places = [...parts.surfaces.querySelectorAll<HTMLElement>('[data-surface]')];
    while (this.all.length < count && this.openSurface !== null) {
      const n = this.all.length;
      this.all.push(this.openSurface(places[n], words.surface.name(data.title, n), this.events(n)));
    }
  }

  private events(n: number): SurfaceEvents {
    const stage = this.stage;
    return {
      moved: () => this.moved(this.all[n]),
      resized: () => this.resized(this.all[n]),
      rested: () => {
        if (n < this.together) stage.rested();
        this.waiting.begin();
      },
      dragged: (dx) => stage.state.mode === 'tilt' && n === 0 && stage.tilt.dragged(dx),
      pressed: (x, y) => n === 0 && (stage.tools.pressed(x, y) || stage.tilt.pressed(x, y)),
      key: (event) => stageKey(stage, event),
      plain: () => this.replaced(),
    };
  }

  /** How many surfaces are in sight. */
  private get together(): number {
    const { mode } = this.stage.state;
    return mode === 'difference' ? 3 : mode === 'beside' ? 2 : 1;
  }

  /** What each surface shows for the state. */
  private wanted(): Laid[] {
    return laidFor(this.stage, this.first?.physical ?? true, () => this.line());
  }

  /** Descriptions that a mode needs before anything can be laid. */
  private async prepare(): Promise<void> {
    const { state, lamp, range, other } = this.stage;
    if (state.mode === 'lamp') await lamp.prepare();
    if (state.mode === 'range') await range.prepare();
    if (state.mode === 'beside') await other.prepare();
  }

  /** Put the views of the state on the surfaces. */
  private async lay(): Promise<void> {
    const { parts, state } = this.stage;
    await this.prepare();
    this.need(this.together);
    const wanted = this.wanted();
    const key = `${state.mode} ${wanted.map(({ views }) => views.map((v) => `${v.service} ${v.id}`).join()).join('; ')}`;
    const fresh = key !== this.shownKey;
    this.shownKey = key;
    for (const surface of this.all) surface.mirror(state.corrected);
    // A control that only moved is done here: nothing is laid again, nothing is asked for.
    if (!fresh) return this.relook();
    const wasClosed = this.stage.dataset['live'] === undefined;
    const laid = Promise.all(wanted.map(({ views, look }, n) => this.all[n].show(views, look)));
    await laid.catch((fault: unknown) => {
      this.shownKey = '';
      throw fault;
    });
    this.sayPlain();
    this.stage.dataset['live'] = '';
    parts.stills.hidden = true;
    // The layout has just changed; the library notices on its next frame.
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    if (wasClosed || this.stage.state.region === null) this.fit(this.stage.state.region, true);
    this.align(this.first);
    this.relook();
    this.stage.reflect();
  }

  private get plainTilt(): string {
    return this.stage.data.stills === null ? words.surface.plainTilt : words.stills.plain;
  }

  /** The shaders are gone for good: lay what can be shown without. */
  private replaced(): void {
    this.shownKey = '';
    void this.stage.use();
  }

  private sayPlain(): void {
    if (this.first?.physical !== false) return;
    const { mode } = this.stage.state;
    if (mode === 'tilt') this.stage.say(this.plainTilt);
    if (mode === 'lamp' || mode === 'range' || mode === 'difference')
      this.stage.say(words.surface.plainMode);
  }

  /** Combine the layers as the state says: no tile is asked for. */
  relook(): void {
    if (this.shownKey === '') return;
    this.wanted().forEach(({ look }, n) => this.all[n]?.look(look));
  }

  /** The divider on the screen, CSS pixels of the first surface. */
  line(): Line | null {
    const placing = this.placing();
    if (placing === null) return null;
    return lineFor(this.stage.state, this.stage.data.frame, this.box(), placing);
  }

  /** What is drawn in the main place now: the difference itself, else the first picture. */
  laid(): Laid | null {
    const all = this.shownKey === '' ? [] : this.wanted();
    return (this.stage.state.mode === 'difference' ? all[2] : all[0]) ?? null;
  }

  /** Distance of a point of the plate from the divider, plate pixels, towards the second. */
  distance(): ((x: number, y: number) => number) | null {
    const line = this.stage.state.mode === 'slide' ? this.line() : null;
    const placing = this.placing();
    if (line === null || placing === null) return null;
    return distanceFrom(line, placing);
  }

  /** The first surface's box, CSS pixels. */
  box(): Region {
    const element = this.first?.element ?? this.stage.parts.well;
    return { x: 0, y: 0, width: element.clientWidth, height: element.clientHeight };
  }

  placing(): Placing | null {
    return this.first?.placing() ?? null;
  }

  region(): Region | null {
    return this.first?.region() ?? null;
  }

  fit(region: Region | null, atOnce: boolean): void {
    this.first?.fit(region, atOnce);
  }

  zoom(factor: number): void {
    this.first?.zoom(factor);
  }

  pan(dx: number, dy: number): void {
    this.first?.pan(dx, dy);
  }

  /** Bring all surfaces in sight to what one of them shows. */
  private align(leader: Surface | null): void {
    if (leader === null || this.leading !== null) return;
    this.leading = leader;
    for (const surface of this.all.slice(0, this.together))
      if (surface !== leader) surface.follow(leader, this.link(surface));
    this.leading = null;
  }

  private link(follower: Surface): Link | undefined {
    if (this.stage.state.mode !== 'beside') return undefined;
    return this.stage.other.link(follower === this.first);
  }

  /** Who saw the whole plate goes on seeing all of it. */
  private resized(surface: Surface | undefined): void {
    const whole = surface === this.first && this.stage.state.region === null;
    this.moved(surface);
    // The library brings its own place back after it has told of the size.
    if (whole) requestAnimationFrame(() => this.fit(null, true));
  }

  private moved(by: Surface | undefined): void {
    if (by === undefined || this.first === null) return;
    this.align(by);
    if (by !== this.first) return;
    if (this.stage.state.mode === 'slide') this.relook();
    this.stage.moved();
  }
}
