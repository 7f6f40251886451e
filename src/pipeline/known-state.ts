/** What is known of a plate before any stage runs: that its result is there, or why there is none. */
import { join } from 'node:path';
import type { Finding } from '../records/finding.ts';
import type { PlateResult } from '../records/result.ts';
import type { ContentPlate } from './content.ts';
import type { Places } from './places.ts';
import { readFailure } from './results.ts';
import { exists } from './store.ts';
import { tiltFolder } from './tilt-stills.ts';

export interface PlateState {
  readonly slug: string;
  readonly state: 'unchanged' | 'made' | 'failed';
  readonly findings: readonly Finding[];
}

/** Null where the stages must run. */
export async function knownState(
  places: Places,
  plate: ContentPlate,
  key: string,
  result: PlateResult | undefined,
): Promise<PlateState | null> {
  const { slug } = plate;
  if (result?.key === key && (await hasTiles(places, result))) {
    return { slug, state: 'unchanged', findings: result.findings };
  }
  const failure = await readFailure(places, slug);
  if (failure?.key === key) return { slug, state: 'failed', findings: failure.findings };
  return null;
}

async function hasTiles(places: Places, { views, pair }: PlateResult): Promise<boolean> {
  const here = await Promise.all([
    pair?.stills ? exists(join(places.cache, tiltFolder, pair.stills.folder)) : true,
    ...views.flatMap((view) => [
      exists(join(places.tiles, view.tiles, 'info.json')),
      ...view.layers.map(({ folder }) => exists(join(places.layers, folder, 'layer.json'))),
    ]),
  ]);
  return here.every(Boolean);
}
