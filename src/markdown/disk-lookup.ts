/** What texts may refer to, read from the content folder and the results as Astro asks for it. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { joinOverlay } from '../records/join-overlay.ts';
import { plateOverlaySchema } from '../records/overlay.ts';
import { plateSchema, type PlateRecord } from '../records/plate.ts';
import { resultSchema, type PlateResult } from '../records/result.ts';
import { readFrontMatter } from '../records/yaml-door.ts';
import { knownPlate, type KnownPicture, type KnownPlate, type MarkdownLookup } from './lookup.ts';

/** Widest whole picture that a figure of a spot is cut from, pixels. */
const widest = 2400;

/** Keep what a file gave until the file changes. */
function kept<T>(read: (path: string) => T | null): (path: string) => T | null {
  const known = new Map<string, { readonly time: number; readonly value: T | null }>();
  return (path) => {
    try {
      const time = statSync(path).mtimeMs;
      const before = known.get(path);
      if (before?.time === time) return before.value;
      const value = read(path);
      known.set(path, { time, value });
      return value;
    } catch {
      return null;
    }
  };
}

function readPlate(path: string): PlateRecord | null {
  const text = readFileSync(path, 'utf8');
  const read = readFrontMatter({ plate: '', file: 'plate.md', text }, plateSchema);
  return read.ok ? read.value : null;
}

function readOverlay(path: string) {
  const text = readFileSync(path, 'utf8');
  const read = readFrontMatter({ plate: '', file: 'plate.md', text }, plateOverlaySchema);
  return read.ok ? read.value : null;
}

function readResult(path: string): PlateResult | null {
  const found = resultSchema.safeParse(JSON.parse(readFileSync(path, 'utf8')));
  return found.success ? found.data : null;
}

/** The view asked for where it lies in the frame, else the one that reads positive. */
export function pictureOf(result: PlateResult, asked: string | undefined): KnownPicture | null {
  const inFrame = result.views.filter((view) => view.registered);
  const view =
    inFrame.find(({ id }) => id === asked) ??
    inFrame.find(({ reading }) => reading === 'positive') ??
    inFrame[0];
  const size = view?.sizes.findLast(({ width }) => width <= widest) ?? view?.sizes[0];
  if (!view || !size) return null;
  const path = `plates/${result.slug}/views/${view.id}/full/${size.width},${size.height}/0/default.jpg`;
  const { width, height } = result.frame;
  return { view: view.id, path, frame: { width, height } };
}

/**
 * @param content The content folder.
 * @param records Folder of the results, `<slug>/record.json`.
 */
export function diskLookup(content: string, records: string): MarkdownLookup {
  const plate = kept(readPlate);
  const overlay = kept(readOverlay);
  const result = kept(readResult);
  const safe = (slug: string) => /^[a-z0-9-]+$/.test(slug);
  return {
    plate: (slug, language): KnownPlate | null => {
      if (!safe(slug)) return null;
      const folder = join(content, 'plates', slug);
      const record = plate(join(folder, 'plate.md'));
      const told = language ? overlay(join(folder, `plate.${language}.md`)) : null;
      return record && knownPlate(joinOverlay(record, told).record);
    },
    plates: () => {
      try {
        return readdirSync(join(content, 'plates')).filter(safe).sort();
      } catch {
        return [];
      }
    },
    picture: (slug, view) => {
      const found = safe(slug) ? result(join(records, slug, 'record.json')) : null;
      return found && pictureOf(found, view);
    },
  };
}
