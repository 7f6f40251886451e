/** What the stage's buttons and fields do. */
import type { PlateStage } from './stage.ts';
import { differencePair, viewWith } from './mode-views.ts';
import { isRoom } from '../imaging/tilt.ts';
import { modes, type Mode, type ViewState } from './view-state.ts';
import { words } from './words.ts';

const step = 90;
const moves: Readonly<Record<string, readonly [dx: number, dy: number]>> = {
  left: [-step, 0],
  right: [step, 0],
  up: [0, -step],
  down: [0, step],
};

/** Do what a button says: `mode:slide`, `larger`, `move:left`. */
export function act(stage: PlateStage, action: string, button: HTMLElement): void {
  const [verb, object = ''] = action.split(':');
  switch (verb) {
    case 'mode':
      return chooseMode(stage, object);
    case 'smaller':
      return void stage.use().then(() => stage.surfaces.zoom(1 / 1.5));
    case 'larger':
      return void stage.use().then(() => stage.surfaces.zoom(1.5));
    case 'whole':
      return void stage.use().then(() => stage.surfaces.fit(null, false));
    case 'move':
      return void stage.use().then(() => stage.surfaces.pan(...(moves[object] ?? [0, 0])));
    case 'correct':
      return correct(stage);
    case 'screen':
      return wholeScreen(stage);
    case 'swap':
      return stage.change({ of: stage.state.of.toReversed() });
    case 'tilt':
      return stage.tilt.act(object);
    case 'lamp':
      return stage.lamp.act(object);
    case 'range':
      return stage.range.act(object);
    case 'tool':
      return stage.tools.toggle(object);
    default:
      return stage.tools.act(verb, object, button);
  }
}

/** Two views for a mode: what is shown already where the mode allows it. */
function viewsFor(stage: PlateStage, mode: Mode): readonly string[] {
  const { data, state } = stage;
  if (mode === 'tilt' && data.pair) return [data.pair.positive, data.pair.negative];
  if (mode === 'difference') return differencePair(data, state.of) ?? state.of;
  const layer = mode === 'lamp' ? 'lamp' : mode === 'range' ? 'gain' : null;
  if (layer !== null) {
    const view = viewWith(data, layer, state.of[0]);
    return view ? [view.id, ...state.of.filter((id) => id !== view.id)].slice(0, 2) : state.of;
  }
  if (mode !== 'slide') return state.of;
  const fit = data.views.filter((v) => v.registered).map((v) => v.id);
  const chosen = state.of.filter((id) => fit.includes(id));
  return [...new Set([...chosen, ...fit])].slice(0, 2);
}

function chooseMode(stage: PlateStage, name: string): void {
  const mode = modes.find((m) => m === name);
  if (mode !== undefined) stage.change({ mode, of: viewsFor(stage, mode) });
}

function correct(stage: PlateStage): void {
  const corrected = !stage.state.corrected;
  stage.change({ corrected });
  stage.say(corrected ? words.picture.turned : words.picture.unturned);
}

function wholeScreen(stage: PlateStage): void {
  const change =
    document.fullscreenElement === stage ? document.exitFullscreen() : stage.requestFullscreen();
  change.catch(() => stage.say(words.faults.noScreen));
}

/** Set one field of the state from a control. */
export function setField(stage: PlateStage, field: string, value: string): void {
  const { of } = stage.state;
  const changes: Readonly<Record<string, () => Partial<ViewState>>> = {
    first: () => ({ of: [value, of[1] === value ? of[0] : of[1]] }),
    second: () => ({ of: [of[0] === value ? of[1] : of[0], value] }),
    divider: () => ({ divider: Number(value) / 100 }),
    turn: () => ({ turn: Number(value) }),
    fixed: () => ({ fixed: value === 'plate' ? 'plate' : 'screen' }),
    tilt: () => ({ tilt: Number(value) }),
    room: () => (isRoom(value) ? { room: value } : {}),
    bearing: () => ({ bearing: Number(value) }),
    height: () => ({ height: Number(value) }),
    with: () => ({ with: value === '' ? null : value, withView: null }),
    withView: () => ({ withView: value }),
  };
  if (field === 'stops' || field === 'white') return stage.range.set(field, Number(value));
  const change = changes[field];
  if (change) stage.change(change());
  else stage.tools.set(field, value);
}
