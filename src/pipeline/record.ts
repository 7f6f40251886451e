/** Stage *record*: what the stages found out, as the one file that the pages read. */
import { join } from 'node:path';
import type { CaptureResult, PlateResult, SittingResult } from '../records/result.ts';
import type { Finding } from '../records/finding.ts';
import { resultVersion } from '../records/result.ts';
import { setupOf } from '../records/sitting.ts';
import { baseCapture } from './align.ts';
import type { ContentSitting } from './content.ts';
import { plateScale } from './plate-scale.ts';
import { allFiles, pictureFiles } from './read.ts';
import type { TiledPlate } from './tile.ts';

export function recordPlate(plate: TiledPlate, key: string): PlateResult {
  const { slug, record, sittings } = plate.plate;
  const withheld = new Set(record.withheld);
  const scale = plateScale(record, sittings[0].record, plate.scale);
  return {
    version: resultVersion,
    slug,
    key,
    sittings: sittings.map((sitting) => sittingResult(plate, sitting, withheld)),
    frame: {
      ...plate.frame,
      pixelsPerMillimetre: scale.pixelsPerMillimetre,
      scaleUncertainty: scale.uncertainty,
      scaleFrom: scale.from,
    },
    views: [...plate.tiled],
    pair: plate.pair,
    findings: openFindings(plate.findings, sittings, withheld),
  };
}

/**
 * Findings that neither are about a withheld capture nor name one or its files: a sentence that
 * compares two captures is about both.
 */
function openFindings(
  findings: readonly Finding[],
  sittings: readonly ContentSitting[],
  withheld: ReadonlySet<string>,
): Finding[] {
  if (withheld.size === 0) return [...findings];
  const captures = sittings.flatMap(({ record }) => record.captures);
  const names = captures
    .filter(({ id }) => withheld.has(id))
    .flatMap((capture) => [capture.id, ...allFiles(capture)]);
  const escaped = names.map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const named = new RegExp(`(?<![\\w-])(?:${escaped.join('|')})(?![\\w-])`);
  return findings.filter(
    (f) =>
      (f.capture === null || !withheld.has(f.capture)) &&
      ![f.file, f.field, f.message, f.remedy].some((part) => part && named.test(part)),
  );
}

function sittingResult(
  plate: TiledPlate,
  sitting: ContentSitting,
  withheld: ReadonlySet<string>,
): SittingResult {
  const { camera, captures, date } = sitting.record;
  const exif = plate.files.get(pictureFiles(baseCapture(sitting))[0])?.exif;
  return {
    id: sitting.id,
    date: date ?? exif?.taken?.slice(0, 10) ?? null,
    base: baseCapture(sitting).id,
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
          inspection: plate.inspections.get(join(sitting.id, capture.id)) ?? null,
        };
      }),
  };
}
