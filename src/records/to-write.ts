/** The mark that stands where a person must still write, and where it stands in a record. */

/** As `npm run new` writes it: `TO WRITE: what the picture shows`. */
export const toWriteMark = 'TO WRITE';

/** Paths of all texts that still carry the mark. */
export function placesToWrite(value: unknown, path: readonly PropertyKey[] = []): PropertyKey[][] {
  if (typeof value === 'string') return value.includes(toWriteMark) ? [[...path]] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    placesToWrite(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}
