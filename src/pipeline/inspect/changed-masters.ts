/**
 * Fixity of a plate's masters: each file is read again, whatever its times say, and compared with
 * the digest that the last build found. A bit that a disk has lost changes no date.
 */
import { join } from 'node:path';
import { finding, type Finding } from '../../records/finding.ts';
import type { ContentPlate } from '../content.ts';
import { digestFile } from '../file-digests.ts';
import type { Places } from '../places.ts';
import { readResult } from '../results.ts';

export async function changedMasters(places: Places, plate: ContentPlate): Promise<Finding[]> {
  const result = await readResult(places, plate.slug);
  if (!result) return [];
  const findings: Finding[] = [];
  for (const { captures } of result.sittings) {
    for (const capture of captures) {
      for (const { name, sha256 } of capture.files) {
        // A file that is gone has its own finding.
        if (!plate.captureFiles.includes(name)) continue;
        const now = await digestFile(join(plate.folder, 'captures', name));
        if (now !== sha256) findings.push(changed(plate.slug, capture.id, name, sha256, now));
      }
    }
  }
  return findings;
}

function changed(
  plate: string,
  capture: string,
  name: string,
  before: string,
  now: string,
): Finding {
  return finding({
    level: 'warning',
    plate,
    capture,
    file: `captures/${name}`,
    code: 'master-changed',
    message: `The file is not that of the last build: its SHA-256 is ${now.slice(0, 12)}…, and was ${before.slice(0, 12)}….`,
    remedy:
      'If you replaced it, build again. If nobody did, bring it back from your archive: the disk or a program has changed it.',
  });
}
