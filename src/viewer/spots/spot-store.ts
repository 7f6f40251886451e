/** The reader's own spots, kept in this browser under the plate's name. Nothing is sent. */
import { ownSpotFrom, type OwnSpot } from './annotations.ts';

const key = (slug: string) => `mirrorleaf spots ${slug}`;

/** What is kept; anything that cannot be read is passed over. */
export function keptSpots(slug: string): OwnSpot[] {
  try {
    const list: unknown = JSON.parse(localStorage.getItem(key(slug)) ?? '[]');
    return Array.isArray(list) ? list.map(ownSpotFrom).filter((s) => s !== null) : [];
  } catch {
    return [];
  }
}

/** @returns Whether the browser kept it. */
export function keepSpots(slug: string, spots: readonly OwnSpot[]): boolean {
  try {
    localStorage.setItem(key(slug), JSON.stringify(spots));
    return true;
  } catch {
    return false;
  }
}
