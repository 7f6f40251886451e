/** Addresses that plates had before: each leads on to the page of today. */
import type { PublishedPlate } from './exhibit.ts';

export interface FormerAddress {
  /** Path under `plates/`, without slashes at its ends: `old-slug`, `old-slug/captures`. */
  readonly path: string;
  /** The same part of the plate's folder of today, with a slash at the end. */
  readonly to: string;
  readonly title: string;
}

const parts = ['', 'captures/', 'embed/'];

/** A slug that a plate has today is never a former one. */
export function formerAddresses(plates: readonly PublishedPlate[]): FormerAddress[] {
  const today = new Set(plates.map(({ slug }) => slug));
  return plates.flatMap(({ slug, record }) =>
    record.formerly
      .filter((former) => !today.has(former))
      .flatMap((former) =>
        parts.map((part) => ({
          path: `${former}/${part}`.replace(/\/$/, ''),
          to: `${slug}/${part}`,
          title: record.title,
        })),
      ),
  );
}
