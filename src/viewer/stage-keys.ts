/** Keys while a picture has the focus, beside the library's own arrows, plus and minus. */
import type { PlateStage } from './stage.ts';

/** @returns Whether the key was used. */
export function stageKey(stage: PlateStage, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey) return false;
  if (event.key === '0') {
    stage.surfaces.fit(null, false);
    return true;
  }
  if (event.key === 'Escape') return stage.tools.close();
  if (!event.shiftKey) return false;
  const across = { ArrowLeft: -1, ArrowRight: 1 }[event.code] ?? 0;
  const along = { ArrowDown: -1, ArrowUp: 1 }[event.code] ?? 0;
  const { mode, bearing, height } = stage.state;
  if (mode === 'tilt' && across !== 0) stage.tilt.step(across);
  else if (mode === 'lamp' && across !== 0)
    stage.change({ bearing: (bearing + 5 * across + 360) % 360 });
  else if (mode === 'lamp' && along !== 0)
    stage.change({ height: Math.min(90, Math.max(0, height + 2 * along)) });
  else return false;
  return true;
}
