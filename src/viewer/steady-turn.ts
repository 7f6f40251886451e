/**
 * A hand that shakes must not make the plate flash: the plate may change the way it turns only
 * so often. Between two turns of direction the tones change once at most, and a flash is a pair
 * of opposing changes.
 *
 * References
 * - WCAG 2.2, 2.3.1 (three flashes or below threshold): no more than three general flashes in
 *   any one second.
 */

/** Turns of direction in any one second: two flashes. */
const most = 4;
/** Share of the way to the hand's place that is gone at each reading: trembling is left out. */
const share = 0.1;
/** Degrees: less is no turn. */
const still = 0.01;

export class SteadyTurn {
  value: number;
  private direction = 0;
  /** When it turned, milliseconds. */
  private turns: number[] = [];

  constructor(value: number) {
    this.value = value;
  }

  /** @param wanted Where the hand is, degrees. @param now Milliseconds. */
  next(wanted: number, now: number): number {
    const step = (wanted - this.value) * share;
    const direction = Math.abs(step) < still ? 0 : Math.sign(step);
    if (direction !== 0 && direction !== this.direction) {
      this.turns = this.turns.filter((at) => now - at < 1000);
      if (this.turns.length >= most) return this.value;
      this.turns.push(now);
      this.direction = direction;
    }
    this.value += step;
    return this.value;
  }
}
