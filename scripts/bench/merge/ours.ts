/**
 * Our calibration and merge of the frames in a folder, in memory as the reference has them.
 * Prints `{ calibrate, merge }`, CPU seconds; writes `ours.raw`, 32-bit float RGB.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { evenPlaces } from '../../../src/imaging/merge/even-places.ts';
import { exposureMerger } from '../../../src/imaging/merge/merge-exposures.ts';
import { noiseFromFrames } from '../../../src/imaging/merge/noise-from-frames.ts';
import { recoverResponse, responseTable } from '../../../src/imaging/merge/response-curve.ts';
import { roundingVariance, signalVariance } from '../../../src/imaging/merge/signal-noise.ts';

interface Shape {
  readonly width: number;
  readonly height: number;
  readonly seconds: readonly number[];
}

const folder = process.argv[2];
const shape = JSON.parse(readFileSync(join(folder, 'shape.json'), 'utf8')) as Shape;
const { width, height, seconds } = shape;
const frames = seconds.map((_, k) => new Uint8Array(readFileSync(join(folder, `frame-${k}.raw`))));

const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const start = cpu();
const places = evenPlaces(1600);
const step = Math.max(4, Math.round(Math.sqrt((width * height) / 40_000)));
const means = seconds.map(() => 0);
for (let y = 1; y < height - 1; y += step) {
  for (let x = 1; x < width - 1; x += step) {
    for (let c = 0; c < 3; c += 1) offer(x, y, c);
  }
}
const found = recoverResponse(places.chosen(), seconds);
if (!found.ok) throw new Error(found.reason);
const signals = responseTable(found.value, 8);
const middle = cpu();

const thinned = frames.map((codes) => {
  const count = Math.floor(codes.length / 601);
  return Float32Array.from({ length: count }, (_, i) => signals[codes[i * 601]]);
});
const clip = 0.98;
const rounding = roundingVariance(signals);
const kept = Float64Array.from({ length: 4097 }, (_, i) => rounding((i / 4096) ** 2));
const noise = noiseFromFrames(thinned, seconds, { clip, rounding });
const own = noise.ok ? noise.value : { gain: 1 / 20_000, darkVariance: 1e-7 };
const merger = exposureMerger({
  ...{ seconds, clip },
  variance: (s) =>
    signalVariance(own, s) + kept[Math.min(4096, Math.round(Math.sqrt(Math.max(0, s)) * 4096))],
});
const out = new Float32Array(frames[0].length);
merger.merge(
  frames.map((codes) => ({ codes, signals })),
  ...([0, out.length, out] as const),
);
const end = cpu();
writeFileSync(join(folder, 'ours.raw'), out);
console.log(
  JSON.stringify({ calibrate: middle - start, merge: end - middle, floor: merger.floor }),
);

function offer(x: number, y: number, c: number): void {
  let spread = 0;
  for (const [k, codes] of frames.entries()) {
    let [sum, low, high] = [0, 255, 0];
    for (let j = -1; j <= 1; j += 1) {
      for (let i = -1; i <= 1; i += 1) {
        const code = codes[((y + j) * width + x + i) * 3 + c];
        sum += code;
        low = Math.min(low, code);
        high = Math.max(high, code);
      }
    }
    means[k] = sum / 9;
    spread = Math.max(spread, high - low);
  }
  places.offer(means, spread);
}
