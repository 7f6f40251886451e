/** Lamp: where it stands, what is drawn, what was measured about it. */
import { lightDirection } from '../../imaging/conventions.ts';
import { withinHull } from '../../imaging/relight/lamp-hull.ts';
import { lampLight } from '../../imaging/relight/lamp-light.ts';
import {
  degreesBetween,
  nearestDirection,
  type Direction,
} from '../../imaging/relight/light-place.ts';
import type { LampLayer, SlopeLayer } from '../../records/layer.ts';
import { describedPlanes, fetchedOnce, planesOnSurface, type Described } from '../data-planes.ts';
import type { Look } from '../look.ts';
import { viewWith } from '../mode-views.ts';
import type { StageView } from '../stage-data.ts';
import type { PlateStage } from '../stage.ts';
import type { SurfaceView } from '../surface.ts';
import { renderings, type Rendering } from '../view-state.ts';
import { LampHandle } from './lamp-handle.ts';
import { drawHeight, HeightHandle } from './height-handle.ts';
import { lampCaption, lampNote, standingWords } from './lamp-words.ts';
import { words } from '../words.ts';

export class LampPanel {
  private readonly stage: PlateStage;
  private readonly handle: LampHandle | null;
  private lamp: Described<LampLayer> | null = null;
  private slope: Described<SlopeLayer> | null = null;

  /** Fetch the descriptions. */
  readonly prepare = fetchedOnce(() => this.load());

  constructor(stage: PlateStage) {
    this.stage = stage;
    const lamp = stage.querySelector<HTMLElement>('[data-part="lamp"]');
    this.handle = lamp && new LampHandle(stage, lamp);
    const arc = stage.querySelector<SVGSVGElement>('[data-part="quarter"]');
    if (arc) new HeightHandle(stage, arc);
  }

  private get view(): StageView | null {
    return viewWith(this.stage.data, 'lamp', this.stage.state.of[0]);
  }

  private async load(): Promise<void> {
    const view = this.view;
    if (view === null) throw new Error(words.lamp.none);
    const surface = viewWith(this.stage.data, 'slope', view.id);
    const [lamp, slope] = await Promise.all([
      describedPlanes<LampLayer>(view, 'lamp'),
      surface && describedPlanes<SlopeLayer>(surface, 'slope'),
    ]);
    this.lamp = lamp;
    this.slope = slope;
    if (this.handle) this.handle.marks = lamp.lamps.map((l) => l.bearing);
  }

  private get wanted(): Direction {
    return lightDirection(this.stage.state.bearing, this.stage.state.height);
  }

  /** Index of the captured lamp that is nearest. */
  private get nearest(): number {
    if (this.lamp === null) return 0;
    return nearestDirection(
      this.lamp.lamps.map((l) => l.direction),
      this.wanted,
    );
  }

  /** The direction that is drawn: free within the captured lamps, or the nearest of them. */
  private get drawn(): Direction {
    const { lamp, wanted } = this;
    if (lamp === null) return wanted;
    const lamps = lamp.lamps.map((l) => l.direction);
    if (!lamp.free || this.stage.state.rendering === 'frame') return lamps[this.nearest];
    return withinHull(lamps, lamp.hull, wanted);
  }

  /** The published picture of the nearest captured frame, where there is one. */
  private frameView(): StageView | null {
    const { view, lamp } = this;
    if (view === null || lamp === null) return null;
    const number = String(this.nearest + 1).padStart(String(lamp.lamps.length).length, '0');
    const id = `${view.captures[0]}-${number}`;
    return this.stage.data.views.find((v) => v.id === id) ?? null;
  }

  private get surfaceWanted(): boolean {
    const { rendering } = this.stage.state;
    return this.slope !== null && rendering !== 'lit' && rendering !== 'frame';
  }

  /** What has to lie on the surface now. */
  onSurface(): readonly SurfaceView[] {
    const { view, lamp, slope } = this;
    if (view === null || lamp === null) return [];
    const frame = this.stage.state.rendering === 'frame' ? this.frameView() : null;
    if (frame !== null) return [frame];
    if (slope !== null && this.surfaceWanted) {
      const of = viewWith(this.stage.data, 'slope', view.id) ?? view;
      return [planesOnSurface(of, 'slope', slope)];
    }
    return [planesOnSurface(view, 'lamp', lamp)];
  }

  look(): Look {
    const { lamp, slope, drawn } = this;
    const { rendering } = this.stage.state;
    if (lamp === null || (rendering === 'frame' && this.frameView() !== null))
      return { kind: 'single' };
    if (slope !== null && this.surfaceWanted) {
      const { offset, step, steepest } = slope;
      const kind = rendering as 'relief' | 'slope' | 'gloss';
      // Of the surface any lamp may be asked for: it is a drawing, not a photograph.
      const light = this.wanted;
      return { kind: 'surface', rendering: kind, light, offset, step, steepest };
    }
    const { domain, base, factors } = lampLight(lamp, drawn);
    return { kind: 'lamp', planes: lamp.planes, domain, base, factors };
  }

  private get frame() {
    return { number: this.nearest + 1, published: this.frameView() !== null };
  }

  /** What is seen, for below the picture; null while nothing is known of the lamps. */
  get caption(): string | null {
    const { lamp, drawn, frame } = this;
    return lamp && lampCaption(lamp, this.stage.state.rendering, drawn, frame);
  }

  act(what: string): void {
    const { state } = this.stage;
    const [verb, word = ''] = what.split('-');
    if (verb === 'as') {
      const rendering = renderings.find((r) => r === word);
      if (rendering) this.stage.change({ rendering });
    } else if (verb === 'next' || verb === 'previous') this.step(verb === 'next' ? 1 : -1);
    else if (verb === 'nearest') this.standAt(this.nearest);
    else if (verb === 'bearing')
      this.stage.change({
        bearing: (state.bearing + Number(word === 'less' ? -5 : 5) + 360) % 360,
      });
  }

  /** To the neighbour of the nearest captured lamp, in the order in which they were taken. */
  private step(by: number): void {
    const count = this.lamp?.lamps.length ?? 0;
    if (count > 0) this.standAt((this.nearest + by + count) % count);
  }

  private standAt(index: number): void {
    const lamp = this.lamp?.lamps[index];
    if (lamp === undefined) return;
    this.stage.change({
      bearing: Math.round(lamp.bearing * 10) / 10,
      height: Math.round(lamp.height * 10) / 10,
      rendering: 'frame',
    });
  }

  moved(): void {
    this.handle?.reflect();
  }

  reflect(): void {
    this.handle?.reflect();
    const { stage, lamp } = this;
    const { state } = stage;
    const panel = stage.querySelector<HTMLElement>('[data-panel="lamp"]');
    if (panel === null || state.mode !== 'lamp') return;
    drawHeight(panel, state.height, lamp?.lamps.map((l) => l.height) ?? []);
    for (const button of panel.querySelectorAll<HTMLElement>('[data-do^="lamp:as-"]')) {
      const word = button.dataset['do']?.slice('lamp:as-'.length) as Rendering;
      button.setAttribute('aria-pressed', String(word === state.rendering));
      button.hidden = this.slope === null && lamp !== null && !['lit', 'frame'].includes(word);
    }
    const bearing = panel.querySelector('input[data-set="bearing"]');
    bearing?.setAttribute(
      'aria-valuetext',
      words.lamp.bearing(String(Math.round(state.bearing)), words.lamp.from(state.bearing)),
    );
    const height = panel.querySelector('input[data-set="height"]');
    height?.setAttribute('aria-valuetext', words.lamp.height(String(Math.round(state.height))));
    const say = (part: string, sentence: string) => {
      const place = panel.querySelector(`[data-part="${part}"]`);
      if (place && place.textContent !== sentence) place.textContent = sentence;
    };
    say('bearing-reading', `${Math.round(state.bearing)}°`);
    say('height-reading', `${Math.round(state.height)}°`);
    if (lamp === null) return;
    const off = degreesBetween(this.drawn, this.wanted);
    const steepest = this.slope?.steepest;
    say('standing', standingWords(lamp, state, off, this.drawn, this.frame, steepest));
    say('lamp-note', lampNote(lamp, this.slope));
  }
}
