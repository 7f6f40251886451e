/**
 * `<plate-stage>`: the plate on its dark ground with its ways of looking. The markup comes from
 * `PlateStage.astro` and is complete as it is; this element moves it. Nothing is fetched before
 * the reader first asks for something, and nothing leaves the page.
 */
import { reflectControls } from './control-state.ts';
import { LampPanel } from './lamp/lamp-panel.ts';
import { OtherPlate } from './other-plate.ts';
import { RangePanel } from './range/range-panel.ts';
import { DividerHandle } from './divider-handle.ts';
import { followStories } from './looks/story.ts';
import { partsOf, type StageParts } from './stage-parts.ts';
import { StageSurfaces } from './stage-surfaces.ts';
import { act, setField } from './stage-actions.ts';
import type { StageData } from './stage-data.ts';
import { showScale } from './scale-display.ts';
import { TiltPanel } from './tilt-panel.ts';
import { ToolPanels } from './tool-panels.ts';
import { settleState } from './settle-state.ts';
import { formatViewState, parseViewState } from './view-address.ts';
import { clipRegion, firstState, frameOf, type ViewState } from './view-state.ts';
import { defineSpoken, words } from './words.ts';

export class PlateStage extends HTMLElement {
  data!: StageData;
  state!: ViewState;
  parts!: StageParts;
  surfaces!: StageSurfaces;
  tilt!: TiltPanel;
  lamp!: LampPanel;
  range!: RangePanel;
  other!: OtherPlate;
  tools!: ToolPanels;
  private handle!: DividerHandle;
  private opening!: ViewState;
  private addressTimer = 0;
  private readonly onHash = () => this.readAddress();

  connectedCallback(): void {
    const source = this.querySelector('script[type="application/json"]')?.textContent;
    if (source === null || source === undefined || this.parts !== undefined) return;
    this.data = JSON.parse(source) as StageData;
    this.parts = partsOf(this);
    this.opening = firstState(this.data, this.hasAttribute('opening'));
    this.state = this.opening;
    this.surfaces = new StageSurfaces(this);
    this.handle = new DividerHandle(this);
    this.tilt = new TiltPanel(this);
    this.lamp = new LampPanel(this);
    this.range = new RangePanel(this);
    this.other = new OtherPlate(this);
    this.tools = new ToolPanels(this);
    this.listen();
    this.reflect();
    if (this.addressed) {
      followStories(this);
      addEventListener('hashchange', this.onHash);
      this.readAddress();
    }
  }

  disconnectedCallback(): void {
    removeEventListener('hashchange', this.onHash);
    clearTimeout(this.addressTimer);
  }

  /** Whether the address of the page speaks of this stage. */
  get addressed(): boolean {
    return this.hasAttribute('addressed');
  }

  private listen(): void {
    this.addEventListener('click', (event) => {
      const asked = (event.target as Element).closest<HTMLElement>('[data-do]');
      if (asked?.dataset['do'] === undefined) return;
      // What was said of the last thing is not said of the next.
      this.say('');
      act(this, asked.dataset['do'], asked);
    });
    this.addEventListener('input', (event) => {
      const field = event.target as HTMLInputElement | HTMLSelectElement;
      if (field.dataset['set'] !== undefined) setField(this, field.dataset['set'], field.value);
    });
    // A press on a still picture opens the moving ones; the link stays for opening elsewhere.
    this.parts.stills.addEventListener('click', (event) => {
      const plain = !event.ctrlKey && !event.metaKey && !event.shiftKey && event.button === 0;
      if (!plain || (event.target as Element).closest('[data-still]') === null) return;
      event.preventDefault();
      void this.use();
    });
    document.addEventListener('fullscreenchange', () => this.reflect());
  }

  /** Open the moving pictures if they are not open yet, and show the state. */
  async use(): Promise<void> {
    try {
      await this.surfaces.show();
    } catch (fault) {
      this.say(fault instanceof Error ? fault.message : words.faults.pictures);
    }
  }

  /** Change what is shown. */
  change(part: Partial<ViewState>): void {
    const frame = frameOf(this.data, this.state.mode, this.state.of);
    this.state = { ...this.state, ...part };
    const now = frameOf(this.data, this.state.mode, this.state.of);
    // Regions count in the pixels of the frame; another frame begins with the whole picture.
    if (now.width !== frame.width || now.height !== frame.height)
      this.state = { ...this.state, region: null };
    this.reflect();
    void this.use();
    this.writeAddress();
  }

  /** Bring the controls into line with the state. */
  reflect(): void {
    this.dataset['mode'] = this.state.mode;
    reflectControls(this);
    this.tilt.reflect();
    this.lamp.reflect();
    this.range.reflect();
    this.other.reflect();
    this.handle.reflect();
    showScale(this);
    // Whoever draws beside the plate (a lesson's section) follows.
    this.dispatchEvent(new CustomEvent('stage-change'));
  }

  /** What is in sight has moved: follow with everything that is drawn over or beside it. */
  moved(): void {
    this.handle.reflect();
    this.lamp.moved();
    if (this.state.mode === 'range') this.range.moved();
    this.tools.moved();
    showScale(this);
  }

  /** A movement has ended: remember the place, in the address as well. */
  rested(): void {
    const frame = frameOf(this.data, this.state.mode, this.state.of);
    const seen = this.surfaces.region();
    if (seen === null) return;
    const kept = clipRegion(seen, frame);
    const whole = kept !== null && kept.width >= frame.width - 1 && kept.height >= frame.height - 1;
    this.state = { ...this.state, region: whole ? null : kept };
    this.writeAddress();
  }

  private writeAddress(): void {
    if (!this.addressed) return;
    clearTimeout(this.addressTimer);
    // Browsers refuse more than about a hundred changes of the address in half a minute.
    this.addressTimer = window.setTimeout(() => {
      history.replaceState(history.state, '', formatViewState(this.state));
    }, 350);
  }

  private readAddress(): void {
    clearTimeout(this.addressTimer);
    if (this.show(location.hash)) this.scrollIntoView({ block: 'nearest' });
  }

  /** Show what an address says; false where it says nothing of the viewer. */
  show(fragment: string): boolean {
    const asked = parseViewState(fragment);
    if (asked === null) return false;
    const { state, said } = settleState(this.data, asked, this.opening);
    this.state = state;
    this.reflect();
    void this.use().then(() => {
      this.surfaces.fit(state.region, true);
      if (said.length > 0) this.say(said.join(' '));
    });
    return true;
  }

  /** Say something politely, to eyes and to screen readers. */
  say(sentence: string): void {
    this.parts.said.textContent = sentence;
  }
}

defineSpoken('plate-stage', PlateStage);
