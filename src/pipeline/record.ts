/** Stage *record*: what the stages found out, as the one file that the pages read. */
import { join } from 'node:path';
import type { Inspection } from '../records/inspection.ts';
import type { TiltStills } from '../records/pair-result.ts';
import type { CaptureResult, PlateResult, SittingResult } from '../records/result.ts';
import type { Finding } from '../records/finding.ts';
import { resultVersion } from '../records/result.ts';
import { setupOf } from '../records/sitting.ts';
import { baseCapture } from './align.ts';
import type { ContentSitting } from './content.ts';
import { plateScale } from './plate-scale.ts';
import { allFiles, pictureFiles } from './read.ts';
import type { TiledPlate } from './tile.ts';

export function recordPlate(
  plate: TiledPlate,
  stills: TiltStills | null,
  key: string,
): PlateResult {
  const { slug, record, sittings } = plate.plate;
  const withheld = new Set(record.withheld);
  const isNamed = namesWithheld(sittings, withheld);
  const scale = plateScale(record, sittings[0].record, plate.scale);
  return {
    version: resultVersion,
    slug,
    key,
    sittings: sittings.map((sitting) => sittingResult(plate, sitting, withheld, isNamed)),
    frame: {
      ...plate.frame,
      pixelsPerMillimetre: scale.pixelsPerMillimetre,
      scaleUncertainty: scale.uncertainty,
      scaleFrom: scale.from,
    },
    views: [...plate.tiled],
    pair: plate.pair && { ...plate.pair, stills },
    findings: openFindings(plate.findings, withheld, isNamed),
  };
}

/**
 * Whether a sentence names a withheld capture or one of its files: what compares two captures
 * is about both.
 */
function namesWithheld(
  sittings: readonly ContentSitting[],
  withheld: ReadonlySet<string>,
): (sentence: string | null | undefined) => boolean {
  if (withheld.size === 0) return () => false;
  const names = sittings
    .flatMap(({ record }) => record.captures)
    .filter(({ id }) => withheld.has(id))
    .flatMap((capture) => [capture.id, ...allFiles(capture)]);
  const escaped = names.map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const named = new RegExp(`(?<![\\w-])(?:${escaped.join('|')})(?![\\w-])`);
  return (sentence) => typeof sentence === 'string' && named.test(sentence);
}

function openFindings(
  findings: readonly Finding[],
  withheld: ReadonlySet<string>,
  isNamed: (sentence: string | null | undefined) => boolean,
): Finding[] {
  return findings.filter(
    (f) =>
      (f.capture === null || !withheld.has(f.capture)) &&
      ![f.file, f.field, f.message, f.remedy].some(isNamed),
  );
}

function openInspection(
  inspection: Inspection | null | undefined,
  isNamed: (sentence: string | null | undefined) => boolean,
): Inspection | null {
  if (!inspection) return null;
  return {
    ...inspection,
    measurements: inspection.measurements.filter(
      ({ label, from }) => !isNamed(label) && !isNamed(from),
    ),
    maps: inspection.maps.filter(({ caption }) => !isNamed(caption)),
    flatField: isNamed(inspection.flatField?.file) ? null : inspection.flatField,
  };
}

function sittingResult(
  plate: TiledPlate,
  sitting: ContentSitting,
  withheld: ReadonlySet<string>,
  isNamed: (sentence: string | null | undefined) => boolean,
): SittingResult {
  const { camera, captures, date } = sitting.record;
  const base = baseCapture(sitting);
  const exif = plate.files.get(pictureFiles(base)[0])?.exif;
  return {
    id: sitting.id,
    date: date ?? exif?.taken?.slice(0, 10) ?? null,
    base: withheld.has(base.id) ? null : base.id,
    camera: {
      make: camera.make ?? exif?.make ?? null,
      model: camera.model ?? exif?.model ?? null,
      lens: camera.lens ?? exif?.lens ?? null,
      focalLength: camera.focalLength ?? exif?.focalLength ?? null,
      aperture: camera.aperture ?? exif?.aperture ?? null,
      iso: camera.iso ?? exif?.iso ?? null,
      distance: camera.distance ?? null,
    },
    captures: captures
      .filter((capture) => !withheld.has(capture.id))
      .map((capture): CaptureResult => {
        return {
          id: capture.id,
          kind: capture.kind,
          setup: capture.setup,
          setupKind: setupOf(sitting.record, capture)?.kind ?? 'other',
          reading: capture.reading,
          files: pictureFiles(capture).flatMap((name) => plate.files.get(name) ?? []),
          registration: plate.registrations.get(join(sitting.id, capture.id)) ?? {
            state: 'not-measured',
            reason: 'It was not tried.',
          },
          inspection: openInspection(plate.inspections.get(join(sitting.id, capture.id)), isNamed),
        };
      }),
  };
}
