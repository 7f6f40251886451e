/** Range: which part of a bracket's light is shown. */
import { lightHistogram } from '../../imaging/light-histogram.ts';
import type { GainLayer } from '../../records/layer.ts';
import { describedPlanes, fetchedOnce, planesOnSurface, type Described } from '../data-planes.ts';
import type { Look } from '../look.ts';
import { viewWith } from '../mode-views.ts';
import type { StageView } from '../stage-data.ts';
import type { PlateStage } from '../stage.ts';
import type { SurfaceView } from '../surface.ts';
import {
  exposureWords,
  rangeCaption,
  rangeNote,
  shareWords,
  standingWords,
  stopsWords,
  whiteWords,
} from './range-words.ts';
import { words } from '../words.ts';

/** Stops that the histogram shows at most: what lies lower is in its first bar. */
const widest = 14;
/** Bars of the histogram. */
const bars = 64;

export class RangePanel {
  private readonly stage: PlateStage;
  private gain: Described<GainLayer> | null = null;
  private marks = false;
  private timer = 0;
  private tries = 0;

  /** Fetch the description. */
  readonly prepare = fetchedOnce(() => this.load());

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  private get view(): StageView | null {
    return viewWith(this.stage.data, 'gain', this.stage.state.of[0]);
  }

  private async load(): Promise<void> {
    const view = this.view;
    if (view === null) throw new Error(words.range.none);
    this.gain = await describedPlanes<GainLayer>(view, 'gain');
    this.listFrames(this.gain);
  }

  private listFrames(gain: GainLayer): void {
    const place = this.stage.querySelector('[data-part="range-frames"]');
    place?.querySelectorAll('button').forEach((button) => button.remove());
    place?.append(
      ...gain.frames.map((frame, n) => {
        const button = document.createElement('button');
        button.type = 'button';
        button.dataset['do'] = `range:frame-${n + 1}`;
        button.textContent = exposureWords(frame.seconds);
        return button;
      }),
    );
  }

  onSurface(): readonly SurfaceView[] {
    const { view, gain } = this;
    if (view === null) return [];
    return gain === null ? [view] : [view, planesOnSurface(view, 'gain', gain)];
  }

  /** What is seen, for below the picture. */
  get caption(): string {
    return rangeCaption(this.stage.state, this.frame);
  }

  private get frame() {
    const { frame } = this.stage.state;
    return frame === null ? null : (this.gain?.frames[frame - 1] ?? null);
  }

  look(): Look {
    const { gain, frame } = this;
    if (gain === null) return { kind: 'single' };
    const { state } = this.stage;
    const { offsetBase, offsetMerged } = gain.gain;
    return {
      kind: 'range',
      offset: gain.offset[0],
      step: gain.step[0],
      offsetBase,
      offsetMerged,
      stops: frame?.stops ?? state.stops,
      white: frame === null ? (state.stops === null ? 1 : state.white) : 1,
      clip: frame?.clip ?? null,
      marks: this.marks,
    };
  }

  /** What white shows when the merged light is first asked for: the brightest light. */
  private fullStops(): number {
    return Math.round(-(this.gain?.gain.headroom ?? 0) * 10) / 10;
  }

  act(what: string): void {
    const { stage } = this;
    const frame = /^frame-(\d+)$/.exec(what)?.[1];
    if (frame !== undefined) stage.change({ frame: Number(frame) });
    else if (what === 'rendering') stage.change({ stops: null, frame: null, white: 1 });
    else if (what === 'merged')
      stage.change({ stops: stage.state.stops ?? this.fullStops(), frame: null });
    else if (what === 'marks') {
      this.marks = !this.marks;
      stage.surfaces.relook();
      stage.reflect();
    }
  }

  set(field: 'stops' | 'white', value: number): void {
    const { state } = this.stage;
    if (field === 'stops') this.stage.change({ stops: value, frame: null });
    else
      this.stage.change({
        white: Number((2 ** value).toPrecision(6)),
        stops: state.stops ?? this.fullStops(),
        frame: null,
      });
  }

  /** After a rest, the histogram of what is in sight. */
  moved(): void {
    clearTimeout(this.timer);
    this.tries = 0;
    this.timer = window.setTimeout(() => this.histogram(), 350);
  }

  /** Tiles are still coming: look once more, for ten seconds at most. */
  private again(): void {
    if (this.tries++ < 20) this.timer = window.setTimeout(() => this.histogram(), 500);
  }

  private histogram(): void {
    const { gain, stage } = this;
    if (gain === null || stage.state.mode !== 'range') return;
    const layers = stage.surfaces.first?.layerCodes(2) ?? null;
    if (layers === null) return this.again();
    const { headroom, footroom } = gain.gain;
    const { offsetBase, offsetMerged } = gain.gain;
    const numbers = { offset: gain.offset[0], step: gain.step[0], offsetBase, offsetMerged };
    const [low, high] = [Math.max(-footroom - 1, headroom - widest), headroom + 1];
    const { counts, total } = lightHistogram(layers[0], layers[1], numbers, low, high, bars);
    if (total === 0) this.again();
    const most = Math.max(1, ...counts);
    const width = 256 / bars;
    const path = Array.from(counts, (count, n) =>
      count === 0
        ? ''
        : `M${n * width} 72v${(-70 * Math.sqrt(count / most)).toFixed(1)}h${width - 1}V72z`,
    ).join('');
    const draw = (part: string, d: string) =>
      stage.querySelector(`[data-draw="${part}"]`)?.setAttribute('d', d);
    draw('histogram', path);
    const whiteStops = this.whiteStops();
    const x = (256 * (whiteStops - low)) / (high - low);
    draw('white', x >= 0 && x <= 256 ? `M${x.toFixed(1)} 0V72` : '');
    const above = counts.reduce(
      (sum, count, n) => sum + (low + ((n + 0.5) * (high - low)) / bars > whiteStops ? count : 0),
      0,
    );
    const say = (part: string, sentence: string) => {
      const place = stage.querySelector(`[data-part="${part}"]`);
      if (place) place.textContent = sentence;
    };
    say('darkest', stopsWords(low));
    say('brightest', stopsWords(high));
    say('histogram-words', shareWords(total === 0 ? null : above / total, stage.state.stops));
  }

  /** Light that is shown as white now, stops above 1. */
  private whiteStops(): number {
    const { state } = this.stage;
    const stops = this.frame?.stops ?? state.stops ?? 0;
    const white = this.frame === null ? state.white : Math.min(1, this.frame.clip);
    return Math.log2(white) - stops;
  }

  reflect(): void {
    const { stage, gain } = this;
    const { state } = stage;
    const panel = stage.querySelector<HTMLElement>('[data-panel="range"]');
    if (panel === null || state.mode !== 'range') return;
    const press = (what: string, on: boolean) =>
      panel.querySelector(`[data-do="range:${what}"]`)?.setAttribute('aria-pressed', String(on));
    press('rendering', state.stops === null && state.frame === null);
    press('merged', state.stops !== null && state.frame === null);
    press('marks', this.marks);
    gain?.frames.forEach((_, n) => press(`frame-${n + 1}`, state.frame === n + 1));
    const say = (part: string, sentence: string) => {
      const place = panel.querySelector(`[data-part="${part}"]`);
      if (place && place.textContent !== sentence) place.textContent = sentence;
    };
    const stops = this.frame?.stops ?? state.stops;
    const field = (name: string, value: number, sentence: string) => {
      const input = panel.querySelector<HTMLInputElement>(`input[data-set="${name}"]`);
      if (input && Number(input.value) !== value) input.value = String(value);
      input?.setAttribute('aria-valuetext', sentence);
      say(`${name}-reading`, sentence);
    };
    field('stops', stops ?? 0, stops === null ? words.range.asRendered : stopsWords(stops));
    field('white', Math.log2(state.white), whiteWords(state.white));
    say('range-standing', standingWords(state, this.frame));
    if (gain !== null) say('range-note', rangeNote(gain));
    this.moved();
  }
}
