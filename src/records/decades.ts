/** Decades, as facets and likeness count time. */
import { parseEdtf, yearOfDay } from './edtf.ts';

/** Decades that a date can mean, such as [1840, 1850]; none when it has no beginning or end. */
export function decadesOf(date: string | undefined): number[] {
  const parsed = date === undefined ? null : parseEdtf(date);
  const ends = [parsed?.first, parsed?.last].filter(
    (day): day is number => typeof day === 'number' && Number.isFinite(day),
  );
  if (ends.length === 0) return [];
  const [from, to] = [Math.min(...ends), Math.max(...ends)].map((day) =>
    Math.floor(yearOfDay(day) / 10),
  );
  return Array.from({ length: to - from + 1 }, (_, step) => (from + step) * 10);
}
