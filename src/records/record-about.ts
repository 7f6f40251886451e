/** What a check of a record needs in order to say where something is. */
import { finding, type Finding } from './finding.ts';
import type { PlaceOf } from './yaml-door.ts';

export interface RecordAbout {
  readonly plate: string;
  readonly file: string;
  readonly placeOf: PlaceOf;
}

type Said = Pick<Finding, 'level' | 'code' | 'message' | 'remedy'> & { capture?: string | null };

/** A finding at the place of a field. */
export function findingAt(
  { plate, file, placeOf }: RecordAbout,
  path: readonly PropertyKey[],
  said: Said,
): Finding {
  const { line, column } = placeOf(path);
  const field = path.map(String).join('.');
  return finding({ plate, file, line, column, ...(field === '' ? {} : { field }), ...said });
}

/** Places of the entries whose id an earlier entry has already. */
export function repeated(ids: readonly string[]): number[] {
  return ids.flatMap((id, k) => (ids.indexOf(id) < k ? [k] : []));
}
