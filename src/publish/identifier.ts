/**
 * The lasting name of a plate. Where the museum has none of its own (`identifier` in plate.md),
 * it is the address under which the plate was first published: it stays when the plate's slug
 * changes, and leads on to the new page.
 */
import type { PlateRecord } from '../records/plate.ts';

/** @param exhibit Address of the exhibit, with a slash at the end. */
export function plateIdentifier(
  { identifier, formerly }: Pick<PlateRecord, 'identifier' | 'formerly'>,
  slug: string,
  exhibit: string,
): string {
  return identifier ?? `${exhibit}plates/${formerly[0] ?? slug}/`;
}
