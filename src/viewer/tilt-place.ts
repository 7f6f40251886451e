/** The reading and the turning point of a place of the plate, from small pictures of both readings. */
import {
  readingContrast,
  reflectedLuminance,
  roomLight,
  tiltFor,
  tiltReading,
  tonesOf,
  turningPoint,
} from '../imaging/tilt.ts';
import { toPlate } from './placing.ts';
import type { PlateStage } from './stage.ts';
import { degrees, said } from './tilt-speech.ts';
import { innerRegion, tonePlanes, type TonePlanes } from './tones.ts';
import type { Region } from './view-state.ts';
import { words } from './words.ts';

export class TiltPlace {
  private readonly stage: PlateStage;
  private planes: Promise<TonePlanes> | null = null;

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  load(): Promise<TonePlanes> {
    const { data } = this.stage;
    const of = (id: string | undefined) => data.views.find((v) => v.id === id);
    const [positive, negative] = [of(data.pair?.positive), of(data.pair?.negative)];
    if (!positive || !negative) return Promise.reject(new Error(words.tilt.noPair));
    this.planes ??= tonePlanes(positive, negative, data.frame);
    return this.planes;
  }

  /** A press on the plate reads the place around it, in Tilt. */
  pressed(x: number, y: number): boolean {
    const placing = this.stage.surfaces.placing();
    if (this.stage.state.mode !== 'tilt' || placing === null) return false;
    const [px, py] = toPlate(placing, x, y);
    const { width, height } = this.stage.data.frame;
    if (px < 0 || py < 0 || px > width || py > height) return false;
    // Large enough for a hundred samples of the small pictures, or a finger's width.
    const side = Math.max(44 / placing.scale, Math.max(width, height) / 24);
    const around = { x: px - side / 2, y: py - side / 2, width: side, height: side };
    void this.readPlace(around, words.tilt.pressed);
    return true;
  }

  /** The reading and the turning point of what is in sight. */
  async readHere(): Promise<void> {
    const { data, state } = this.stage;
    const { width, height } = data.frame;
    // Of the whole plate, as for its turning point, not the table around it.
    const seen =
      state.region === null ? innerRegion({ width, height }) : this.stage.surfaces.region();
    if (seen !== null) await this.readPlace(seen, words.tilt.inSight);
  }

  private async readPlace(seen: Region, what: string): Promise<void> {
    try {
      const { positive, negative, scale } = await this.load();
      const region = {
        x: seen.x * scale,
        y: seen.y * scale,
        width: seen.width * scale,
        height: seen.height * scale,
      };
      this.stage.say(this.regionWords(tonesOf(positive, negative, region), what));
    } catch (fault) {
      this.stage.say(fault instanceof Error ? fault.message : words.tilt.small);
    }
  }

  private regionWords(tones: ReturnType<typeof tonesOf>, what: string): string {
    if (!tones.ok) return words.tilt.unread(what, said(tones.reason));
    const room = roomLight[this.stage.state.room];
    const b = reflectedLuminance(this.stage.state.tilt, room);
    const reading = tiltReading(readingContrast(tones.value, 1, b));
    const point = turningPoint(tones.value);
    const at = point.ok ? tiltFor(point.value, room) : null;
    const turns = !point.ok
      ? words.tilt.noTurn(said(point.reason))
      : at === null
        ? words.tilt.notHere
        : words.tilt.turnsAt(degrees(at));
    return words.tilt.now(what, words.tilt.reading[reading], turns);
  }
}
