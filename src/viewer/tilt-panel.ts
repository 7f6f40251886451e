/** Tilt: the control, its drawing, its words, and the plate's turning point. */
import {
  readingContrast,
  reflectedLuminance,
  roomLight,
  tiltFor,
  tiltLimit,
  tiltReading,
  tonesOf,
  turningPoint,
  type Tones,
} from '../imaging/tilt.ts';
import { DeviceTilt } from './device-tilt.ts';
import type { Look } from './look.ts';
import type { PlateStage } from './stage.ts';
import { nearestStill, stillView } from './still-steps.ts';
import type { SurfaceView } from './surface.ts';
import { drawSection, placeMark } from './tilt-drawing.ts';
import { TiltPlace } from './tilt-place.ts';
import { degrees, heldWords, said } from './tilt-speech.ts';
import { innerRegion } from './tones.ts';
import { words } from './words.ts';

/** Degrees of tilt for one CSS pixel of drag: the whole range in about a hand's width. */
const degreesPerPixel = 0.06;

export class TiltPanel {
  private readonly stage: PlateStage;
  private tones: Tones | null = null;
  private reason: string | null = null;
  private turnsByDrag = true;
  private readonly device: DeviceTilt;
  private readonly place: TiltPlace;

  constructor(stage: PlateStage) {
    this.stage = stage;
    this.place = new TiltPlace(stage);
    this.device = new DeviceTilt((tilt) => this.set(tilt));
  }

  look(): Look {
    const { tilt, room } = this.stage.state;
    return { kind: 'tilt', a: 1, b: reflectedLuminance(tilt, roomLight[room]) };
  }

  /** The number of the still that stands for this tilt; null where the browser mixes by itself. */
  private get stillNumber(): number | null {
    const { data, state, surfaces } = this.stage;
    if (data.stills === null || (surfaces.first?.physical ?? true)) return null;
    return nearestStill(data.stills, state.tilt, state.room);
  }

  /** What lies on the surface instead of both readings. */
  still(): SurfaceView | null {
    const { data } = this.stage;
    const n = this.stillNumber;
    return n === null || data.stills === null ? null : stillView(data, data.stills, n);
  }

  /** What is seen, for below the picture. */
  get caption(): string {
    const { data, state, surfaces } = this.stage;
    const n = this.stillNumber;
    if (n !== null && data.stills !== null)
      return words.caption.still(degrees(data.stills.steps[n].tilt));
    return (surfaces.first?.physical ?? true)
      ? words.caption.tilt(degrees(state.tilt))
      : words.caption.fade;
  }

  /** The tilt at which highlights and shadows are equally bright in this room. */
  private turning(): number | null {
    // The record's own figure, made from the pictures at full depth, where there is one.
    const point = this.tones === null ? null : turningPoint(this.tones);
    const value = this.stage.data.turningPoint ?? (point?.ok ? point.value : null);
    return value === null ? null : tiltFor(value, roomLight[this.stage.state.room]);
  }

  private set(tilt: number): void {
    const held = Math.min(tiltLimit, Math.max(0, Math.round(tilt * 100) / 100));
    if (held !== this.stage.state.tilt) this.stage.change({ tilt: held });
  }

  step(steps: number): void {
    const { stills } = this.stage.data;
    const n = this.stillNumber;
    if (stills !== null && n !== null) {
      const next = stills.steps[Math.min(stills.steps.length - 1, Math.max(0, n + steps))];
      return this.stage.change({ tilt: next.tilt, room: 'window' });
    }
    this.set(this.stage.state.tilt + steps * 0.5);
  }

  /** A drag across the plate turns it, unless the reader chose that it moves the picture. */
  dragged(dx: number): boolean {
    if (!this.turnsByDrag) return false;
    if (dx !== 0) this.set(this.stage.state.tilt + dx * degreesPerPixel);
    return true;
  }

  act(what: string): void {
    if (what === 'less') this.step(-1);
    else if (what === 'more') this.step(1);
    else if (what === 'turning') {
      const at = this.turning();
      if (at === null) this.stage.say(this.pointWords());
      else this.set(at);
    } else if (what === 'drag') {
      this.turnsByDrag = !this.turnsByDrag;
      this.reflect();
    } else if (what === 'device') void this.toggleDevice();
    else if (what === 'here') void this.place.readHere();
  }

  private async toggleDevice(): Promise<void> {
    this.stage.say(await this.device.toggle(this.stage.state.tilt));
    this.stage
      .querySelector('[data-do="tilt:device"]')
      ?.setAttribute('aria-pressed', String(this.device.on));
  }

  /** Work out the plate's own turning point, once. */
  private async measure(): Promise<void> {
    if (this.tones !== null || this.reason !== null) return;
    this.reason = words.tilt.beingRead;
    try {
      const planes = await this.place.load();
      const tones = tonesOf(planes.positive, planes.negative, innerRegion(planes.positive));
      if (tones.ok) this.tones = tones.value;
      this.reason = tones.ok ? null : said(tones.reason);
    } catch (fault) {
      this.reason = fault instanceof Error ? fault.message : words.tilt.small;
    }
    this.stage.reflect();
  }

  pressed(x: number, y: number): boolean {
    return this.place.pressed(x, y);
  }

  private pointWords(): string {
    const recorded = this.stage.data.turningPoint !== null;
    if (this.reason !== null && !recorded) return words.tilt.unknown(this.reason);
    const point = this.tones === null ? null : turningPoint(this.tones);
    if (point?.ok === false && !recorded) return words.tilt.none(said(point.reason));
    const at = this.turning();
    return at === null ? words.tilt.never : words.tilt.at(degrees(at));
  }

  private stillWords(): string | null {
    const { stills } = this.stage.data;
    const n = this.stillNumber;
    if (stills === null || n === null) return null;
    const { tilt, reading } = stills.steps[n];
    return words.stills.step(heldWords(tilt, reading), n + 1, stills.steps.length);
  }

  reflect(): void {
    const { stage } = this;
    const { tilt, room, mode } = stage.state;
    const panel = stage.querySelector<HTMLElement>('[data-panel="tilt"]');
    if (mode !== 'tilt' && this.device.on) this.device.stop();
    if (panel === null || mode !== 'tilt') return;
    if (stage.surfaces.first !== null) void this.measure();
    const b = reflectedLuminance(tilt, roomLight[room]);
    const reading = this.tones === null ? null : tiltReading(readingContrast(this.tones, 1, b));
    const held = this.stillWords() ?? heldWords(tilt, reading);
    const output = panel.querySelector('[data-part="reading"]');
    if (output) output.textContent = held;
    panel.querySelector('input[data-set="tilt"]')?.setAttribute('aria-valuetext', held);
    const point = panel.querySelector('[data-part="point"]');
    if (point && stage.surfaces.first !== null) point.textContent = this.pointWords();
    panel
      .querySelector('[data-do="tilt:drag"]')
      ?.setAttribute('aria-pressed', String(!this.turnsByDrag));
    drawSection(panel, tilt, roomLight[room]);
    placeMark(panel, this.turning());
  }
}
