/**
 * A large pair by itself: `large.ts render FOLDER WIDTH HEIGHT` writes it,
 * `large.ts measure FOLDER` aligns it in a fresh process, so that the memory is the alignment's.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Homography } from '../../../src/imaging/conventions.ts';
import { cornerDistance } from '../../../src/imaging/registration/homography.ts';
import { register } from '../../../src/imaging/registration/register.ts';
import { renderPair } from '../../../src/imaging/render/test-pair.ts';

export interface LargeResult {
  readonly cpuSeconds: number;
  readonly peakMegabytes: number;
  /** Mean corner error, pixels; null where the pair was refused. */
  readonly error: number | null;
  readonly note: string;
}

interface Description {
  readonly width: number;
  readonly height: number;
  readonly truth: Homography;
}

function render(folder: string, width: number, height: number): void {
  const pair = renderPair(90, { width, height, lay: 'mirrored', newScratches: 10, tarnish: 30 });
  writeFileSync(join(folder, 'base.u16'), pair.positive.data);
  writeFileSync(join(folder, 'moving.u16'), pair.negative.data);
  const description: Description = { width, height, truth: pair.homography };
  writeFileSync(join(folder, 'pair.json'), JSON.stringify(description));
}

function measure(folder: string): LargeResult {
  const text = readFileSync(join(folder, 'pair.json'), 'utf8');
  const { width, height, truth } = JSON.parse(text) as Description;
  const load = (name: string) => {
    const { buffer, byteOffset, length } = readFileSync(join(folder, name));
    return { width, height, data: new Uint16Array(buffer, byteOffset, length / 2) };
  };
  const [base, moving] = [load('base.u16'), load('moving.u16')];
  const before = process.cpuUsage();
  const outcome = register(base, moving);
  const { user, system } = process.cpuUsage(before);
  return {
    cpuSeconds: (user + system) / 1e6,
    peakMegabytes: process.resourceUsage().maxRSS / 1024,
    error: outcome.ok ? cornerDistance(outcome.value.homography, truth, width, height) : null,
    note: outcome.ok ? `bound ${outcome.value.boundPixels.toFixed(3)} px` : outcome.reason,
  };
}

const [command, folder, width, height] = process.argv.slice(2);
if (command === 'render') render(folder, Number(width), Number(height));
else console.log(JSON.stringify(measure(folder)));
