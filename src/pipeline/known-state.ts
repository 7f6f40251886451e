/** What is known of a plate before any stage runs: that its result is there, or why there is none. */
import type { Finding } from '../records/finding.ts';
import type { PlateResult } from '../records/result.ts';
import type { ContentPlate } from './content.ts';
import { missingFiles } from './missing-files.ts';
import type { Places } from './places.ts';
import { readFailure } from './results.ts';

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
  if (result?.key === key && missingFiles(places, result).length === 0) {
    return { slug, state: 'unchanged', findings: result.findings };
  }
  const failure = await readFailure(places, slug);
  if (failure?.key === key) return { slug, state: 'failed', findings: failure.findings };
  return null;
}
