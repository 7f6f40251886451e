/**
 * The check material that nobody here made lies beside the project, not in it. A test that
 * needs it says so and skips where it is absent.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(import.meta.dirname, '..', '..', 'shared');

/** Path of a file or folder of the check material, such as `sharedPath('data', 'bagit')`. */
export function sharedPath(...parts: readonly string[]): string {
  return join(folder, ...parts);
}

/** Whether that file or folder is here. */
export function hasShared(...parts: readonly string[]): boolean {
  return existsSync(sharedPath(...parts));
}
