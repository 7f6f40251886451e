import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { inputOfSitting, proposedSizes } from '../../../src/pipeline/plan/sitting-input.ts';
import { sittingSchema } from '../../../src/records/sitting.ts';

const root = join(import.meta.dirname, '../../..');
const scratch = mkdtemp(join(tmpdir(), 'mirrorleaf-plan-'));
afterAll(async () => rm(await scratch, { recursive: true, force: true }));

const plan = (...given: string[]) =>
  promisify(execFile)(process.execPath, [join(root, 'scripts/plan.ts'), ...given], { cwd: root });

describe('from a sitting', () => {
  test('takes what it says and leaves the rest', async () => {
    const { input } = await proposedSizes('inner-basin', join(root, 'content'));
    expect(input.plateWidth).toBe(139.7);
    expect(input.cameraDistance).toBe(1578);
    expect(input.glassThickness).toBe(1);
    // Magnification 100/1478 over 18 px per mm: 3.76 micrometres.
    expect(input.pixelPitch).toBeCloseTo(3.76, 2);
    expect(input.lightCount).toBeUndefined();
  });

  test('an empty sitting gives nothing', () => {
    const empty = sittingSchema.parse({
      captures: [{ id: 'a', file: 'a.tif', setup: 'normal', reading: 'positive' }],
    });
    expect(inputOfSitting(null, empty, 'x').input).toEqual({});
  });

  test('names the sittings that there are', async () => {
    await expect(proposedSizes('nowhere', join(root, 'content'))).rejects.toThrow(
      /^There is no sitting "nowhere"\. There are: .*inner-basin\/sitting/,
    );
  });
});

describe('the command', () => {
  test('writes set-ups to a new file, never over another', async () => {
    const file = join(await scratch, 'plan.yaml');
    const { stdout } = await plan('--glass-thickness', '2', '--setups', file);
    // 2 x 0.743212 mm.
    expect(stdout).toMatch(/Ghost beside the picture +1\.49\u202fmm/);
    const { setups } = parse(await readFile(file, 'utf8')) as {
      setups: Record<string, { glass?: { thickness: number } }>;
    };
    expect(setups['through-glass'].glass?.thickness).toBe(2);
    await expect(plan('--setups', file)).rejects.toMatchObject({ code: 2 });
  });

  test('refuses what is no number, and says the limits', async () => {
    await expect(plan('--warp', 'x')).rejects.toMatchObject({
      code: 2,
      stderr: expect.stringContaining('--warp takes a number from 0 to 10') as string,
    });
  });
});
