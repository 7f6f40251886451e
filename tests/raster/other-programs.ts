/** Programs of others that results are compared with: Debian packages, named beside each test. */
import { execFileSync, spawnSync } from 'node:child_process';

export function hasProgram(name: string): boolean {
  return spawnSync(name, ['-version'], { stdio: 'ignore' }).error === undefined;
}

/** Run a program to its end and give its output; throws with what it said when it fails. */
export function run(name: string, args: readonly string[]): Buffer {
  return execFileSync(name, args, { maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'pipe'] });
}
