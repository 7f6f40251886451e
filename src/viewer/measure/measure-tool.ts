/**
 * Measure: presses on the picture give a length, an angle, an area, or the luminance along a
 * line. Without pointing, a button takes the middle of the picture as a place, which the arrow
 * keys bring there.
 */
import { luminanceOf } from '../tones.ts';
import { download } from '../take/download.ts';
import { regionPicture } from '../take/region-picture.ts';
import { toPlate, toScreen } from '../placing.ts';
import type { PlateStage } from '../stage.ts';
import type { Tool } from '../tool-panels.ts';
import { frameOf } from '../view-state.ts';
import { ActualSize } from './actual-size.ts';
import { angleWords, areaWords, measuredAngle, measuredArea, type Point } from './area-measure.ts';
import { lengthWords, measuredLength } from './length-measure.ts';
import { lineProfile, type ProfileSample } from './line-profile.ts';
import { beginWords, nextWords, type MeasureKind } from './measure-words.ts';
import { profilePath, profileTable } from './profile-drawing.ts';
import { measures, words } from '../words.ts';

const ends: Readonly<Record<MeasureKind, number>> = { length: 2, angle: 3, area: 50, profile: 2 };

/** Pixels that a profile is read from, at most. */
const mostPixels = 6e6;

export class MeasureTool implements Tool {
  private readonly stage: PlateStage;
  private readonly actual: ActualSize;
  private points: Point[] = [];
  private ended = false;
  private kind: MeasureKind = 'length';
  private profile: { samples: ProfileSample[]; perMillimetre: number | null } | null = null;

  constructor(stage: PlateStage) {
    this.stage = stage;
    this.actual = new ActualSize(stage);
  }

  opened(): void {
    void this.stage.use();
    this.again();
    this.actual.opened();
  }

  closed(): void {
    this.points = [];
    this.moved();
  }

  private get frame() {
    return frameOf(this.stage.data, this.stage.state.mode, this.stage.state.of);
  }

  private again(): void {
    this.points = [];
    this.ended = false;
    this.profile = null;
    this.drawProfile();
    this.moved();
    this.show(beginWords(this.kind, this.frame.pixelsPerMillimetre !== null));
  }

  pressed(x: number, y: number): boolean {
    const placing = this.stage.surfaces.placing();
    if (placing === null) return false;
    if (this.ended || this.points.length >= ends[this.kind]) {
      this.points = [];
      this.ended = false;
    }
    this.points.push(toPlate(placing, x, y));
    this.moved();
    this.report();
    return true;
  }

  act(object: string): void {
    const { width, height } = this.stage.surfaces.box();
    if (object === 'middle') this.pressed(width / 2, height / 2);
    else if (object === 'again') this.again();
    else if (object === 'close') this.close();
    else if (object === 'save' && this.profile !== null)
      download(
        `${this.stage.data.slug}-profile.csv`,
        new Blob([profileTable(this.profile.samples, this.profile.perMillimetre)], {
          type: 'text/csv',
        }),
      );
    else this.actual.act(object);
  }

  set(field: string, value: string): void {
    if (field === 'measure') {
      this.kind =
        (['length', 'angle', 'area', 'profile'] as const).find((k) => k === value) ?? 'length';
      const close = this.stage.querySelector<HTMLElement>('[data-do="measure:close"]');
      if (close) close.hidden = this.kind !== 'area';
      this.again();
    } else this.actual.set(field, value);
  }

  /** The last corner of an outline has been set. */
  private close(): void {
    if (this.points.length < 3) return this.show(words.measure.threeCorners);
    this.ended = true;
    this.moved();
    this.report();
  }

  /** A press is right to about one screen pixel in each direction: our own estimate. */
  private get pointing(): number {
    return 1 / (this.stage.surfaces.placing()?.scale ?? 1);
  }

  private report(): void {
    const { kind, points } = this;
    const done = kind === 'area' ? this.ended : points.length === ends[kind];
    if (!done) return this.show(nextWords(kind, points.length));
    const { pixelsPerMillimetre: per, scaleUncertainty } = this.frame;
    const [a, b, c] = points;
    if (kind === 'angle') this.show(`${angleWords(measuredAngle(a, b, c, this.pointing))}.`);
    else if (kind === 'area')
      this.show(
        per === null
          ? words.measure.noArea
          : `${areaWords(measuredArea(points, this.pointing, per, scaleUncertainty))}.`,
      );
    else {
      const pixels = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const length =
        per === null
          ? words.measure.pixels(measures.fixed(pixels, 1))
          : lengthWords(measuredLength(pixels, Math.SQRT2 * this.pointing, per, scaleUncertainty));
      this.show(`${length}.`);
      if (kind === 'profile') void this.readProfile(a, b, length);
    }
  }

  private async readProfile(from: Point, to: Point, length: string): Promise<void> {
    const view = this.stage.data.views.find((v) => v.id === this.stage.state.of[0]);
    if (view === undefined) return;
    try {
      const [left, right] = [Math.min(from[0], to[0]) - 2, Math.max(from[0], to[0]) + 2];
      const [top, bottom] = [Math.min(from[1], to[1]) - 2, Math.max(from[1], to[1]) + 2];
      const asked = { x: left, y: top, width: right - left, height: bottom - top };
      const { canvas, factor, region } = await regionPicture(view.service, asked, mostPixels);
      const image = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height);
      if (!image) throw new Error(words.faults.noPixels);
      const plane = luminanceOf(image.data, image.width, image.height);
      // Plate pixels count from their edges, samples from their centres.
      const inPlane = ([x, y]: Point): Point => [
        (x - region.x) / factor - 0.5,
        (y - region.y) / factor - 0.5,
      ];
      const samples = lineProfile(plane, inPlane(from), inPlane(to));
      const per = this.frame.pixelsPerMillimetre;
      this.profile = { samples, perMillimetre: per === null ? null : per / factor };
      const values = samples.map((s) => s.luminance);
      const [low, high] = [Math.min(...values), Math.max(...values)].map((v) =>
        measures.percent(v),
      );
      this.show(words.measure.profile(length, view.name, low, high, factor));
      this.drawProfile();
    } catch (fault) {
      this.show(fault instanceof Error ? fault.message : words.faults.picture);
    }
  }

  private drawProfile(): void {
    const figure = this.stage.querySelector<HTMLElement>('[data-part="profile"]');
    if (figure === null) return;
    figure.hidden = this.profile === null;
    figure
      .querySelector('path')
      ?.setAttribute('d', this.profile === null ? '' : profilePath(this.profile.samples));
  }

  private show(sentence: string): void {
    const output = this.stage.querySelector('[data-part="measured"]');
    if (output) output.textContent = sentence;
  }

  /** Draw the ends and the lines between them. */
  moved(): void {
    const placing = this.stage.surfaces.placing();
    if (placing === null) return;
    const places = this.points.map((p) => toScreen(placing, ...p));
    const crosses = places.map(([x, y]) => `M${x - 7} ${y}h14M${x} ${y - 7}v14`).join('');
    const lines = places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
    const path = crosses + (places.length > 1 ? lines : '') + (this.ended ? 'z' : '');
    for (const stroke of this.stage.parts.overlay.querySelectorAll('[data-draw="measure"]'))
      stroke.setAttribute('d', path);
  }
}
