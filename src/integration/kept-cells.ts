/**
 * Cells of the index of plates as HTML. In an index of ten thousand plates the same cells stand in
 * four orders, and rendering them is most of the work: each is rendered once for a language, and
 * kept for the next build until something that its plate's pages are made from changes.
 */
import { join } from 'node:path';
import { z } from 'zod';
import type { Places } from '../pipeline/places.ts';
import { readJson, writeWhole } from '../pipeline/store.ts';
import type { CellOf } from '../publish/published-plates.ts';

export interface KeptCells {
  /** The cell of a plate, rendered now where it is not known. */
  readonly cellOf: CellOf;
  /** Keeps the cells that were asked for, and no others. */
  save(): Promise<void>;
}

const keptSchema = z.record(z.string(), z.strictObject({ key: z.string(), html: z.string() }));

/** @param keys By slug: of what a plate's own cell depends on, and perhaps of more. */
export async function openKeptCells(
  places: Places,
  keys: ReadonlyMap<string, string>,
): Promise<KeptCells> {
  const file = join(places.pages, 'cells.json');
  const found = await readJson(file, (value) => keptSchema.parse(value));
  const before = new Map(found.ok ? Object.entries(found.value) : []);
  const now: typeof before = new Map();
  let rendered = 0;

  async function cellOf(language: string, slug: string, render: () => Promise<string>) {
    const name = `${language} ${slug}`;
    const key = keys.get(slug)!;
    const known = now.get(name) ?? before.get(name);
    if (known?.key === key) {
      now.set(name, known);
      return known.html;
    }
    const cell = { key, html: await render() };
    rendered += 1;
    now.set(name, cell);
    return cell.html;
  }

  async function save(): Promise<void> {
    if (rendered === 0 && now.size === before.size) return;
    const store = { root: places.cache, scratch: places.scratch };
    await writeWhole(store, file, JSON.stringify(Object.fromEntries(now)));
  }

  return { cellOf, save };
}
