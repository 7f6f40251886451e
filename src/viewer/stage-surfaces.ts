/**
 * The moving pictures of a stage: one surface for one place, a second one for Beside. Opened on
 * first use over the still pictures, and kept.
 */
import { dividerLine, lineOnScreen, type Line } from './divider-line.ts';
import type { Look } from './look.ts';
import type { Placing } from './placing.ts';
import type { PlateStage } from './stage.ts';
import type { Surface, SurfaceEvents, SurfaceView } from './surface.ts';
import type { Region } from './view-state.ts';

export class StageSurfaces {
  first: Surface | null = null;
  private second: Surface | null = null;
  private readonly stage: PlateStage;
  private openSecond: () => Surface | null = () => null;
  private opening: Promise<void> | null = null;
  private leading: Surface | null = null;
  private shownKey = '';

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  /** Open what is needed, then show the stage's state. */
  async show(): Promise<void> {
    this.opening ??= this.open().catch((fault: unknown) => {
      this.opening = null;
      throw fault;
    });
    await this.opening;
    await this.lay();
  }

  private async open(): Promise<void> {
    this.stage.dataset['opening'] = 'now';
    const { openSurface } = await import('./osd.ts');
    const { parts, data } = this.stage;
    const [left, right] = [...parts.surfaces.querySelectorAll<HTMLElement>('[data-surface]')];
    parts.surfaces.hidden = false;
    const name = `${data.title}: picture. Arrow keys move it, plus and minus change its size, 0 shows all of it.`;
    this.first = openSurface(
      left,
      name,
      this.events(() => this.first),
    );
    // Opened when it is first in sight: the library takes its size from the element.
    this.openSecond = () =>
      (this.second ??= openSurface(
        right,
        `${name} Second picture.`,
        this.events(() => this.second),
      ));
    delete this.stage.dataset['opening'];
  }

  private events(self: () => Surface | null): SurfaceEvents {
    const stage = this.stage;
    return {
      moved: () => this.moved(self()),
      rested: () => {
        if (self() === this.first || this.beside) stage.rested();
      },
      dragged: (dx) => stage.state.mode === 'tilt' && stage.tilt.dragged(dx),
      pressed: (x, y) => stage.tools.pressed(x, y),
      key: (event) => this.key(event),
      plain: () => stage.say(plainWords),
    };
  }

  private get beside(): boolean {
    return this.stage.state.mode === 'beside';
  }

  private view(id: string): SurfaceView {
    const found = this.stage.data.views.find((v) => v.id === id);
    if (found === undefined) throw new Error(`This plate has no view “${id}”.`);
    return found;
  }

  /** Put the views of the state on the surfaces. */
  private async lay(): Promise<void> {
    const { state, parts } = this.stage;
    const first = this.first;
    const second = this.beside ? this.openSecond() : this.second;
    if (first === null) return;
    const one = this.beside || state.mode === 'look';
    const ids = one ? state.of.slice(0, 1) : state.of;
    const key = `${state.mode} ${state.of.join(' ')}`;
    const fresh = key !== this.shownKey;
    this.shownKey = key;
    first.mirror(state.corrected);
    second?.mirror(state.corrected);
    this.relook();
    // A control that only moved is done here: nothing is laid again, nothing is asked for.
    if (!fresh) return;
    const wasClosed = this.stage.dataset['live'] === undefined;
    const laid = Promise.all([
      first.show(ids.map((id) => this.view(id))),
      this.beside ? second?.show([this.view(state.of[1])]) : Promise.resolve(),
    ]);
    await laid.catch((fault: unknown) => {
      this.shownKey = '';
      throw fault;
    });
    if (!first.physical && state.mode === 'tilt') this.stage.say(plainWords);
    this.stage.dataset['live'] = '';
    parts.stills.hidden = true;
    // The layout has just changed; the library notices on its next frame.
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    if (wasClosed || this.stage.state.region === null) this.fit(this.stage.state.region, true);
    if (this.beside) second?.follow(first);
    this.relook();
    this.stage.reflect();
  }

  /** Combine the layers as the state says: no tile is asked for. */
  relook(): void {
    this.first?.look(this.lookNow());
    this.second?.look({ kind: 'single' });
  }

  private lookNow(): Look {
    const { state, tilt } = this.stage;
    if (state.mode === 'tilt') return tilt.look();
    const line = state.mode === 'slide' ? this.line() : null;
    return line === null ? { kind: 'single' } : { kind: 'divide', line };
  }

  /** The divider on the screen, CSS pixels of the first surface. */
  line(): Line | null {
    const placing = this.placing();
    if (placing === null) return null;
    const { state, data } = this.stage;
    if (state.fixed === 'screen') return dividerLine(this.box(), state.divider, state.turn);
    const { width, height } = data.frame;
    const onPlate = dividerLine({ x: 0, y: 0, width, height }, state.divider, state.turn);
    return lineOnScreen(onPlate, placing);
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

  private moved(by: Surface | null): void {
    if (by === null || this.first === null) return;
    if (this.beside && this.second !== null && this.leading === null) {
      this.leading = by;
      (by === this.first ? this.second : this.first).follow(by);
      this.leading = null;
    }
    if (by !== this.first) return;
    if (this.stage.state.mode === 'slide') this.relook();
    this.stage.moved();
  }

  private key(event: KeyboardEvent): boolean {
    if (event.ctrlKey || event.altKey || event.metaKey) return false;
    if (event.key === '0') this.fit(null, false);
    else if (event.key === 'Escape' && this.stage.tools.close()) return true;
    else if (this.stage.state.mode === 'tilt' && event.shiftKey && event.code === 'ArrowLeft')
      this.stage.tilt.step(-1);
    else if (this.stage.state.mode === 'tilt' && event.shiftKey && event.code === 'ArrowRight')
      this.stage.tilt.step(1);
    else return false;
    return true;
  }
}

const plainWords =
  'This browser draws without shaders here: Tilt is shown as a plain cross-fade, which is not what light does.';
