/**
 * Measure: two presses on the picture give a length in millimetres. Without pointing, the
 * buttons take the middle of the picture as a place, which the arrow keys bring there.
 */
import { lengthWords, measuredLength } from './length-measure.ts';
import { toPlate, toScreen } from './placing.ts';
import type { PlateStage } from './stage.ts';
import type { Tool } from './tool-panels.ts';
import { frameOf } from './view-state.ts';

type Point = readonly [x: number, y: number];

export class MeasureTool implements Tool {
  private readonly stage: PlateStage;
  private points: Point[] = [];

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  opened(): void {
    void this.stage.use();
    this.show(
      this.perMillimetre === null
        ? 'The scale of this picture is not known: lengths are given in pixels.'
        : 'Press the picture at both ends of what you want to measure.',
    );
  }

  closed(): void {
    this.points = [];
    this.moved();
  }

  private get frame() {
    return frameOf(this.stage.data, this.stage.state.mode, this.stage.state.of);
  }

  private get perMillimetre(): number | null {
    return this.frame.pixelsPerMillimetre;
  }

  pressed(x: number, y: number): boolean {
    const placing = this.stage.surfaces.placing();
    if (placing === null) return false;
    if (this.points.length === 2) this.points = [];
    this.points.push(toPlate(placing, x, y));
    this.moved();
    this.report();
    return true;
  }

  act(object: string): void {
    const { width, height } = this.stage.surfaces.box();
    if (object === 'middle') this.pressed(width / 2, height / 2);
    if (object === 'again') {
      this.points = [];
      this.moved();
      this.show('Press the picture at both ends of what you want to measure.');
    }
  }

  private report(): void {
    if (this.points.length < 2) return this.show('One end is set. Press at the other end.');
    const [a, b] = this.points;
    const pixels = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const per = this.perMillimetre;
    const scale = this.stage.surfaces.placing()?.scale ?? 1;
    // A press is right to about one screen pixel at each end: our own estimate.
    const pointing = Math.SQRT2 / scale;
    this.show(
      per === null
        ? `${pixels.toFixed(1)} pixels; the scale is not known.`
        : `${lengthWords(measuredLength(pixels, pointing, per, this.frame.scaleUncertainty))}.`,
    );
  }

  private show(words: string): void {
    const output = this.stage.querySelector('[data-part="measured"]');
    if (output) output.textContent = words;
  }

  /** Draw the ends and the line between them. */
  moved(): void {
    const line = this.stage.parts.overlay.querySelector('[data-draw="measure"]');
    const placing = this.stage.surfaces.placing();
    if (line === null || placing === null) return;
    const cross = ([x, y]: Point) => {
      const [sx, sy] = toScreen(placing, x, y);
      return `M${sx - 7} ${sy}h14M${sx} ${sy - 7}v14`;
    };
    const between =
      this.points.length === 2
        ? `M${toScreen(placing, ...this.points[0]).join(' ')}L${toScreen(placing, ...this.points[1]).join(' ')}`
        : '';
    const path = this.points.map(cross).join('') + between;
    for (const stroke of this.stage.parts.overlay.querySelectorAll('[data-draw="measure"]'))
      stroke.setAttribute('d', path);
  }
}
