/**
 * Who holds a lock, and whether it can still be at work. A process number means something only
 * where it was given: two containers on one machine may have the same host name and both a
 * process 7, and a number is given again when its process has ended. So an owner also tells the
 * space of its number (this start of this machine, this container) and when the process began.
 *
 * References
 * - man 7 pid_namespaces; man 5 proc_pid_stat, field 22; man 5 proc_sys_kernel.
 */
import { readFile, readlink } from 'node:fs/promises';
import { hostname } from 'node:os';
import { z } from 'zod';

export const ownerSchema = z.strictObject({
  pid: z.number().int(),
  host: z.string(),
  /** ISO 8601, UTC. */
  since: z.string(),
  /** Where the process number counts; empty where the system does not tell. */
  space: z.string().default(''),
  /** When the process began, in the system's own count; empty likewise. */
  born: z.string().default(''),
});
export type Owner = z.output<typeof ownerSchema>;

export async function ownIdentity(): Promise<Owner> {
  return {
    pid: process.pid,
    host: hostname(),
    since: new Date().toISOString(),
    space: await ownSpace(),
    born: await birth('self'),
  };
}

/** Whether the owner lives; null where that cannot be known from here. */
export async function isRunning({ pid, host, space, born }: Owner): Promise<boolean | null> {
  if (host !== hostname() || space !== (await ownSpace())) return null;
  if (born !== '' && (await seesOwnProcesses())) return (await birth(String(pid))) === born;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it lives, but belongs to somebody else.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

async function ownSpace(): Promise<string> {
  try {
    const start = await readFile('/proc/sys/kernel/random/boot_id', 'utf8');
    return `${start.trim()} ${await readlink('/proc/self/ns/pid')}`;
  } catch {
    return '';
  }
}

/** A container may still show the processes of the machine around it, by other numbers. */
const seesOwnProcesses = async (): Promise<boolean> =>
  (await readlink('/proc/self').catch(() => '')) === String(process.pid);

/** Field 22 of `/proc/<pid>/stat`; the second, the name, is in brackets and may hold anything. */
async function birth(pid: string): Promise<string> {
  const text = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => '');
  return text.slice(text.lastIndexOf(')') + 2).split(' ')[19] ?? '';
}
