/** A build in a process group of its own, so that a kill takes Astro's process along. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

const scripts = join(import.meta.dirname, '..', '..');

export type Script = 'plates.ts' | 'build.ts';

export interface BuildFolders {
  readonly content: string;
  readonly cache: string;
  /** Where Node keeps compiled modules: hundreds of builds need not compile them again. */
  readonly compiled: string;
}

/** A build is looked at this often, milliseconds. */
const glance = 15;

/**
 * Starts the command and kills it, with all its processes, when they have worked for so long.
 * Work is processor time: whatever else the machine does then shifts no moment.
 *
 * @param work Milliseconds.
 * @returns Whether the kill met it alive, its exit code where not, and its work.
 */
export async function killBuild(
  script: Script,
  { content, cache, compiled }: BuildFolders,
  work: number,
): Promise<{ struck: boolean; code: number | null; work: number }> {
  const child = spawn(process.execPath, [join(scripts, script), '--quiet'], {
    env: {
      ...process.env,
      MIRRORLEAF_CONTENT: content,
      MIRRORLEAF_CACHE: cache,
      MIRRORLEAF_OUT: join(cache, 'exhibit'),
      NODE_COMPILE_CACHE: compiled,
    },
    stdio: 'ignore',
    detached: true,
  });
  let over = false;
  const ended = new Promise<number | null>((resolve) => {
    child.on('exit', (code) => {
      over = true;
      resolve(code);
    });
  });
  let done = 0;
  // A process that has ended has no work any more; what it had is known from the last look.
  for (; !over && done < work; await sleep(glance)) done = Math.max(done, workOf(child.pid!));
  try {
    if (!over) process.kill(-child.pid!, 'SIGKILL');
  } catch {
    // It ended in this very moment.
  }
  const code = await ended;
  return { struck: code === null, code, work: done };
}

/** Lets the command end; its work in milliseconds. @throws Error where it fails. */
export async function wholeBuild(script: Script, folders: BuildFolders): Promise<number> {
  const { code, work } = await killBuild(script, folders, Infinity);
  if (code !== 0) throw new Error(`An undisturbed ${script} ended with ${code}.`);
  return work;
}

/**
 * Processor time of a process, of its children at work and of those that have ended: fields 14
 * to 17 of `/proc/<pid>/stat` (man 5 proc_pid_stat), in hundredths of a second.
 */
function workOf(pid: number | string): number {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
    const own = fields.slice(11, 15).reduce((sum, ticks) => sum + Number(ticks) * 10, 0);
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ');
    return children.filter(Boolean).reduce((sum, child) => sum + workOf(child), own);
  } catch {
    return 0;
  }
}
