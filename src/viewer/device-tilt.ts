/**
 * A telephone's own tilt as the control of Tilt. Only after a press on its button, only with
 * the permission that the system asks for, and not where less motion is wished.
 *
 * References
 * - W3C DeviceOrientation Event specification: `beta` is the rotation around the screen's
 *   horizontal axis, degrees; `requestPermission()` where the system wants a question.
 */
import { words } from './words.ts';

import { SteadyTurn } from './steady-turn.ts';

type AskingEvent = typeof DeviceOrientationEvent & { requestPermission?: () => Promise<string> };

export class DeviceTilt {
  on = false;
  private from: number | null = null;
  private start = 0;
  private turn = new SteadyTurn(0);
  private heard = false;
  private readonly set: (tilt: number) => void;
  private readonly listen = (event: DeviceOrientationEvent) => this.move(event.beta);

  constructor(set: (tilt: number) => void) {
    this.set = set;
  }

  /** @returns What to tell the reader. */
  async toggle(tiltNow: number): Promise<string> {
    if (this.on) {
      this.stop();
      return words.device.stopped;
    }
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return words.device.lessMotion;
    if (!('DeviceOrientationEvent' in window)) return words.device.silent;
    const asking = DeviceOrientationEvent as AskingEvent;
    const answer = await asking.requestPermission?.().catch(() => 'denied');
    if (answer !== undefined && answer !== 'granted') return words.device.denied;
    this.on = true;
    this.from = null;
    this.heard = false;
    this.start = tiltNow;
    this.turn = new SteadyTurn(tiltNow);
    addEventListener('deviceorientation', this.listen);
    await new Promise((resolve) => setTimeout(resolve, 800));
    if (!this.heard) {
      this.stop();
      return words.device.silent;
    }
    return words.device.follows;
  }

  stop(): void {
    this.on = false;
    removeEventListener('deviceorientation', this.listen);
  }

  private move(beta: number | null): void {
    if (beta === null) return;
    this.heard = true;
    this.from ??= beta;
    this.set(this.turn.next(this.start + beta - this.from, performance.now()));
  }
}
