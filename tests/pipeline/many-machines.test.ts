/**
 * The ready files for engines, as far as they can be looked at without the engines: they are of
 * the right grammar, and with the index that each engine gives, the command inside them asks for
 * each share once. A stand-in for npm tells what it was asked.
 */
import { execFileSync } from 'node:child_process';
import { chmod, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { shareOption } from '../../src/pipeline/command.ts';

const files = join(import.meta.dirname, '../../scripts/many-machines');
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-engines-'));
  await writeFile(join(folder, 'npm'), '#!/bin/sh\nprintf "%s " "$@" "$MIRRORLEAF_CONTENT"\n');
  await chmod(join(folder, 'npm'), 0o755);
});
afterAll(() => rm(folder, { recursive: true }));

async function readEngine(name: string): Promise<Record<string, never>> {
  const document = parseDocument(await readFile(join(files, name), 'utf8'));
  expect([...document.errors, ...document.warnings]).toEqual([]);
  return document.toJS() as Record<string, never>;
}

/** What the stand-in was asked, with the engine's variables and nothing else of this machine. */
const asked = (command: readonly string[], env: Record<string, string>) =>
  execFileSync(command[0], command.slice(1), {
    env: { PATH: `${folder}:/usr/bin:/bin`, ...env },
    encoding: 'utf8',
  });

const shareIn = (words: string) => shareOption({ share: /--share (\S+)/.exec(words)?.[1] });
const all = [1, 2, 3, 4].map((part) => ({ part, of: 4 }));

describe('with the index of its engine each machine asks for its own share', () => {
  test('in an Indexed Job of Kubernetes, from 0', async () => {
    const job = (await readEngine('kubernetes.yaml')) as unknown as {
      kind: string;
      spec: {
        completionMode: string;
        completions: number;
        template: {
          spec: { containers: { command: string[]; env: { name: string; value: string }[] }[] };
        };
      };
    };
    expect([job.kind, job.spec.completionMode]).toEqual(['Job', 'Indexed']);
    const [{ command, env }] = job.spec.template.spec.containers;
    const given = Object.fromEntries(env.map(({ name, value }) => [name, value]));
    const words = Array.from({ length: job.spec.completions }, (_, k) =>
      asked(command, { ...given, JOB_COMPLETION_INDEX: String(k) }),
    );
    expect(words.map(shareIn)).toEqual(all);
    expect(words[0]).toBe('run plates -- --share 1/4 --jobs 2 /plates ');
  });

  test('in a job array of Slurm, from the number that the file itself gives', async () => {
    const path = join(files, 'slurm.sh');
    const array = /^#SBATCH --array=(\d+)-(\d+)$/m.exec(await readFile(path, 'utf8'));
    const [first, last] = [Number(array?.[1]), Number(array?.[2])];
    const words = Array.from({ length: last - first + 1 }, (_, k) =>
      asked(['sh', path], {
        ...{ MIRRORLEAF_CONTENT: '/plates', MIRRORLEAF_CACHE: '/results' },
        ...{ MIRRORLEAF_HOME: folder, SLURM_CPUS_PER_TASK: '2' },
        SLURM_ARRAY_TASK_ID: String(first + k),
        SLURM_ARRAY_TASK_COUNT: String(last - first + 1),
      }),
    );
    expect(words.map(shareIn)).toEqual(all);
    expect(words[3]).toBe('run plates -- --share 4/4 --jobs 2 /plates ');
    // A folder that was not named is said by the shell, and nothing is run.
    expect(() => asked(['sh', path], { MIRRORLEAF_HOME: folder })).toThrow('the shared content');
  });

  test('in a matrix of a workflow, whose results do not lie under one name', async () => {
    const { jobs } = (await readEngine('matrix.yaml')) as unknown as {
      jobs: {
        plates: {
          strategy: { matrix: { share: number[] } };
          steps: { run?: string; with?: Record<string, string> }[];
        };
        exhibit: { needs: string; steps: { with?: Record<string, unknown> }[] };
      };
    };
    const { strategy, steps } = jobs.plates;
    const filled = (text: string, share: number) =>
      text.replaceAll('${{ matrix.share }}', String(share));
    const run = steps.find((step) => step.run)?.run ?? '';
    const words = strategy.matrix.share.map((share) =>
      asked(['sh', '-c', filled(run, share)], { MIRRORLEAF_CONTENT: '' }),
    );
    expect(words.map(shareIn)).toEqual(all);
    const kept = steps.at(-1)?.with?.['name'] ?? '';
    const names = strategy.matrix.share.map((share) => filled(kept, share));
    expect(names).toEqual(['results-1', 'results-2', 'results-3', 'results-4']);
    expect(jobs.exhibit.needs).toBe('plates');
    const taken = jobs.exhibit.steps.find((step) => step.with?.['pattern'])?.with;
    expect(taken).toMatchObject({ pattern: 'results-*', path: 'results', 'merge-multiple': true });
  });
});
