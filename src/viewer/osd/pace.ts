/**
 * Whether this machine can follow a dragged control at full resolution. The graphics work runs
 * apart from the script, so its end is asked for with a fence after each pass. Where passes take
 * longer than two frames of a usual screen, the following ones are made at half the resolution;
 * once the control rests, one at full resolution follows.
 */

/** Longer than this is slow: two frames at 60 a second, milliseconds. */
const slowPass = 34;
/** A control that has not moved for this long rests, milliseconds. */
const rest = 180;
/** Slow passes in a row before the resolution is lowered. */
const patience = 3;

export class Pace {
  private readonly gl: WebGL2RenderingContext;
  private readonly whole: () => void;
  private slow = 0;
  private stride: 1 | 2 = 1;
  private timer = 0;
  private waiting = 0;

  /** @param whole Draws at full resolution. */
  constructor(gl: WebGL2RenderingContext, whole: () => void) {
    this.gl = gl;
    this.whole = whole;
  }

  /** Layer pixels per drawn pixel for the next pass of a moving control. */
  step(): 1 | 2 {
    return this.stride;
  }

  /** A pass of a moving control has been handed over. */
  drawn(): void {
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => {
      if (this.stride !== 1) this.whole();
      this.stride = 1;
      this.slow = 0;
    }, rest);
    if (this.waiting !== 0) return;
    const fence = this.gl.fenceSync(this.gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
    if (fence === null) return;
    this.gl.flush();
    const start = performance.now();
    const look = () => {
      const done = this.gl.getSyncParameter(fence, this.gl.SYNC_STATUS) === this.gl.SIGNALED;
      const took = performance.now() - start;
      if (!done && took < 1000) {
        this.waiting = window.setTimeout(look, 8);
        return;
      }
      this.waiting = 0;
      this.gl.deleteSync(fence);
      this.slow = took > slowPass ? this.slow + 1 : 0;
      if (this.slow >= patience) this.stride = 2;
    };
    this.waiting = window.setTimeout(look, 8);
  }

  stop(): void {
    clearTimeout(this.timer);
    clearTimeout(this.waiting);
  }
}
