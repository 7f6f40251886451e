/** A folder for one test file, gone afterwards. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'mirrorleaf-raster-'));
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
}
