/** Data planes over a view: their description is fetched when a mode first needs it. */
import type { StageView } from './stage-data.ts';
import type { PlaneTiles, SurfaceView } from './surface.ts';
import { words } from './words.ts';

/** Geometry that every `layer.json` has; each kind adds its own numbers. */
export type Described<T> = T & Omit<PlaneTiles, 'folder'>;

/** `version` of the only form that this program draws (`src/records/layer.ts`). */
const drawn = 1;

/** Fetch a description. Rejects with a sentence, for one of another version too. */
export async function describedPlanes<T>(view: StageView, name: string): Promise<Described<T>> {
  const address = `${view.service}/${name}/layer.json`;
  const answer = await fetch(address).catch(() => null);
  if (answer === null) throw new Error(words.faults.dataOffline);
  if (!answer.ok) throw new Error(words.faults.dataAnswer(answer.status, address));
  const found = (await answer.json().catch(() => null)) as
    (Described<T> & { readonly version?: unknown }) | null;
  const sizes = [found?.width, found?.height, found?.tile, found?.planes, found?.levels];
  if (found?.version !== drawn || !sizes.every((n) => typeof n === 'number' && n > 0))
    throw new Error(words.faults.notData(address));
  return found;
}

/** Something to fetch when it is first asked for, and again only after it failed. */
export function fetchedOnce(load: () => Promise<void>): () => Promise<void> {
  let loading: Promise<void> | null = null;
  return () =>
    (loading ??= load().catch((fault: unknown) => {
      loading = null;
      throw fault;
    }));
}

/** The planes as something to lay on a surface. */
export function planesOnSurface(
  view: StageView,
  name: string,
  planes: Omit<PlaneTiles, 'folder'>,
): SurfaceView {
  const { width, height, tile, levels, format } = planes;
  const data = {
    folder: new URL(`${view.service}/${name}`, document.baseURI).href,
    ...{ width, height, tile, levels, format, planes: planes.planes },
  };
  return { id: `${view.id}/${name}`, service: view.service, width, height, data };
}
