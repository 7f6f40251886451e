/**
 * An original with the texts of another language laid over it. What the overlay says wins, what
 * it leaves out stays as it was; which texts are which is kept, since a page must mark those that
 * are in another language than itself.
 */

export interface Joined<T> {
  readonly record: T;
  /** Texts that the overlay gave: `title`, `spots.mastheads.note`, `looks.turning.steps.0.text`. */
  readonly translated: ReadonlySet<string>;
  /** Paths in the overlay to what the original does not have; it is left out. */
  readonly stray: readonly (readonly PropertyKey[])[];
}

export function joinOverlay<T>(original: T, overlay: object | null | undefined): Joined<T> {
  const translated = new Set<string>();
  const stray: PropertyKey[][] = [];

  const join = (there: unknown, here: unknown, path: PropertyKey[], name: string): unknown => {
    if (typeof here === 'string' && typeof there === 'string') {
      translated.add(name);
      return here;
    }
    if (Array.isArray(here) && Array.isArray(there)) return joinList(there, here, path, name);
    if (isGroup(here) && isGroup(there)) {
      const group: Record<string, unknown> = { ...there };
      for (const [key, value] of Object.entries(here)) {
        if (value === undefined || keys.includes(key)) continue;
        group[key] = join(there[key], value, [...path, key], name ? `${name}.${key}` : key);
      }
      return group;
    }
    stray.push(path);
    return there;
  };

  const joinList = (there: unknown[], here: unknown[], path: PropertyKey[], name: string) => {
    const list = [...there];
    const names = namesOf(there);
    namesOf(here).forEach((entry, k) => {
      const at = names.indexOf(entry);
      if (at < 0) stray.push([...path, k]);
      else list[at] = join(there[at], here[k], [...path, k], `${name}.${entry}`);
    });
    return list;
  };

  const record = join(original, overlay ?? {}, [], '') as T;
  return { record, translated, stray };
}

/** Fields that say which entry of a list is meant. */
const keys = ['id', 'term'];

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What each entry of a list is called: its id; its term, counted where it comes again; its place. */
function namesOf(list: readonly unknown[]): string[] {
  const seen = new Map<string, number>();
  return list.map((entry, k) => {
    const key = isGroup(entry) ? (entry['id'] ?? entry['term']) : undefined;
    if (typeof key !== 'string') return String(k);
    const times = seen.get(key) ?? 0;
    seen.set(key, times + 1);
    return times === 0 ? key : `${key}/${times + 1}`;
  });
}
