/**
 * When a plate was published and last changed, from what the museum wrote and not from a clock
 * or a file's time: the same content gives the same feed on every machine.
 */
import { parseEdtf } from '../records/edtf.ts';
import type { PlateRecord } from '../records/plate.ts';
import type { PlateResult } from '../records/result.ts';

export interface PlateDates {
  /** `YYYY-MM-DD`. */
  readonly published: string;
  readonly changed: string;
  /** What the last change was, in the museum's words. */
  readonly note: string | null;
}

/** First day that a date can mean; null where it has no beginning. */
function day(date: string | null | undefined): string | null {
  const first = date ? parseEdtf(date)?.first : null;
  return typeof first === 'number' && Number.isFinite(first)
    ? new Date(first * 86_400_000).toISOString().slice(0, 10)
    : null;
}

/** Null where the content holds no date at all: such a plate is in no feed. */
export function plateDates(record: PlateRecord, result: PlateResult): PlateDates | null {
  const told = record.changes
    .flatMap(({ date, note }) => {
      const at = day(date);
      return at === null ? [] : [{ at, note }];
    })
    .sort((a, b) => (a.at < b.at ? -1 : 1));
  const made = [day(record.describedBy?.date), ...result.sittings.map(({ date }) => day(date))]
    .filter((one) => one !== null)
    .sort();
  const published = told[0]?.at ?? made[made.length - 1];
  if (published === undefined) return null;
  const last = told[told.length - 1];
  return { published, changed: last?.at ?? published, note: last?.note ?? null };
}
