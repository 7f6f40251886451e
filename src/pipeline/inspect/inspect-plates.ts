/**
 * The findings alone: content, read, inspect and align for the plates that are asked for,
 * nothing combined, tiled or published. What was measured is kept, so that the build that
 * follows need not do it again.
 */
import { join } from 'node:path';
import { finding, type Finding } from '../../records/finding.ts';
import type { Inspection } from '../../records/inspection.ts';
import type { Registration } from '../../records/result.ts';
import { alignPlate } from '../align.ts';
import { readContent, type ContentPlate, type ContentResult } from '../content.ts';
import { openFileDigests, type FileDigests } from '../file-digests.ts';
import { inspectStage } from '../inspect.ts';
import { withLock } from '../lock.ts';
import type { Places } from '../places.ts';
import { readPlate } from '../read.ts';
import type { Reporter } from '../reporter.ts';
import { changedMasters } from './changed-masters.ts';
import { clearScratch, type Store } from '../store.ts';
import { WrongUse } from '../wrong-use.ts';

export interface PlateInspection {
  readonly slug: string;
  readonly findings: readonly Finding[];
  /** By `<sitting>/<capture>`; empty where the plate could not be read. */
  readonly inspections: Readonly<Record<string, Inspection | null>>;
  /** By `<sitting>/<capture>`; empty where nothing was aligned. */
  readonly registrations: Readonly<Record<string, Registration>>;
}

export interface InspectOptions {
  readonly places: Places;
  readonly reporter: Reporter;
  /** Only these plates; all where the list is empty. */
  readonly slugs: readonly string[];
}

export interface InspectSummary {
  /** Findings that are about no single plate. */
  readonly collection: readonly Finding[];
  readonly plates: readonly PlateInspection[];
}

/** @throws WrongUse for a plate that is not there. */
export async function inspectPlates(options: InspectOptions): Promise<InspectSummary> {
  const { places, reporter } = options;
  const store: Store = { root: places.cache, scratch: places.scratch };
  const onWait = (sentence: string) => {
    reporter.line(sentence);
  };
  return withLock(
    join(places.cache, 'lock'),
    async () => {
      await clearScratch(store);
      const content = await readContent(places.content);
      const digests = await openFileDigests(store);
      const plates: PlateInspection[] = [];
      for (const plate of chosen(content, options.slugs)) {
        plates.push(await inspectOne(plate, content, store, digests, options));
      }
      await digests.save();
      return { collection: content.findings, plates };
    },
    { onWait },
  );
}

function chosen({ plates }: ContentResult, slugs: readonly string[]): readonly ContentPlate[] {
  const missing = slugs.find((slug) => !plates.some((p) => p.slug === slug));
  if (missing !== undefined) {
    const known = plates.map((p) => p.slug).join(', ');
    throw new WrongUse(`There is no plate "${missing}". The plates are: ${known || 'none'}.`);
  }
  return slugs.length === 0 ? plates : plates.filter(({ slug }) => slugs.includes(slug));
}

async function inspectOne(
  plate: ContentPlate,
  { collection }: ContentResult,
  store: Store,
  digests: FileDigests,
  { places, reporter }: InspectOptions,
): Promise<PlateInspection> {
  const { slug, record, sittings } = plate;
  // Words can be wrong while pictures are right: the captures are looked at all the same.
  if (record === null || sittings.length === 0) {
    return { slug, findings: plate.findings, inspections: {}, registrations: {} };
  }
  const steps = sittings.reduce((sum, s) => sum + s.record.captures.length, 0);
  let step = 0;
  const progress = (label: string) => {
    step += 1;
    reporter.step(label, Math.min(step, 2 * steps + 1), 2 * steps + 1);
  };
  const tally = { made: 0, found: 0 };
  const context = { places, store, digests, tally, collection, progress };
  try {
    const read = await readPlate({ ...plate, record }, context);
    const inspected = await inspectStage(read, context);
    const readable = !read.findings.some((f) => f.level === 'error');
    const aligned = readable ? await alignPlate(inspected, context) : null;
    const masters = await changedMasters(places, plate);
    return {
      slug,
      findings: [...masters, ...(aligned ?? inspected).findings],
      inspections: Object.fromEntries(inspected.inspections),
      registrations: Object.fromEntries(aligned?.registrations ?? []),
    };
  } catch (error) {
    const findings = [...plate.findings, stopped(slug, error)];
    return { slug, findings, inspections: {}, registrations: {} };
  }
}

/** Something that no check foresaw: this plate is given up, the others go on. */
function stopped(slug: string, error: unknown): Finding {
  return finding({
    level: 'error',
    plate: slug,
    code: 'stage-failed',
    message: `The inspection stopped with: ${error instanceof Error ? error.message : String(error)}.`,
    remedy: 'This is a fault of the program. Please report it with this sentence.',
  });
}
