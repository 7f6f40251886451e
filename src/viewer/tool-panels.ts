/** The tools beside the ways of looking. One is open at a time. */
import { CiteTool } from './cite-tool.ts';
import { LooksTool } from './looks/looks-tool.ts';
import { MeasureTool } from './measure/measure-tool.ts';
import { SpotsTool } from './spots/spots-tool.ts';
import { TakeTool } from './take/take-tool.ts';
import type { PlateStage } from './stage.ts';

/** What a tool does while it is open. */
export interface Tool {
  opened(): void;
  closed(): void;
  /** The picture has moved. */
  moved(): void;
  /** A press on the picture, CSS pixels; true when it was used. */
  pressed(x: number, y: number): boolean;
  /** A button of the tool's panel. */
  act(object: string, button: HTMLElement): void;
  /** A field of the tool's panel; the field's name without the tool's. */
  set?(field: string, value: string): void;
}

export class ToolPanels {
  private readonly stage: PlateStage;
  private readonly tools: ReadonlyMap<string, Tool>;
  private open: string | null = null;

  constructor(stage: PlateStage) {
    this.stage = stage;
    this.tools = new Map<string, Tool>([
      ['measure', new MeasureTool(stage)],
      ['spots', new SpotsTool(stage)],
      ['cite', new CiteTool(stage)],
      ['take', new TakeTool(stage)],
      ['looks', new LooksTool(stage)],
    ]);
  }

  toggle(name: string): void {
    const opening = this.open !== name;
    this.close();
    if (!opening) return;
    this.open = name;
    this.reflect();
    this.tools.get(name)?.opened();
    this.keepInSight();
  }

  /** A tool works on the picture: bring it back where the row of tools has left it behind. */
  private keepInSight(): void {
    const { top, height } = this.stage.parts.well.getBoundingClientRect();
    if (top < -height / 3) this.stage.scrollIntoView({ block: 'start' });
  }

  /** @returns Whether a tool was open. */
  close(): boolean {
    const name = this.open;
    if (name === null) return false;
    this.open = null;
    this.tools.get(name)?.closed();
    this.reflect();
    return true;
  }

  private reflect(): void {
    for (const panel of this.stage.querySelectorAll<HTMLElement>('[data-tool]'))
      panel.hidden = panel.dataset['tool'] !== this.open;
    for (const button of this.stage.querySelectorAll<HTMLElement>('[data-do^="tool:"]'))
      button.setAttribute('aria-expanded', String(button.dataset['do'] === `tool:${this.open}`));
  }

  private get current(): Tool | null {
    return this.open === null ? null : (this.tools.get(this.open) ?? null);
  }

  moved(): void {
    this.current?.moved();
  }

  pressed(x: number, y: number): boolean {
    return this.current?.pressed(x, y) ?? false;
  }

  act(verb: string, object: string, button: HTMLElement): void {
    this.tools.get(verb)?.act(object, button);
  }

  /** A field that belongs to a tool. */
  set(field: string, value: string): void {
    this.current?.set?.(field, value);
  }
}
