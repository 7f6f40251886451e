import { readdirSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { median } from '../../../src/imaging/inspect/quantile.ts';
import { exposureTimes } from '../../../src/imaging/merge/exposure-times.ts';
import { exposureMerger } from '../../../src/imaging/merge/merge-exposures.ts';
import { noiseFromFrames } from '../../../src/imaging/merge/noise-from-frames.ts';
import { signalVariance } from '../../../src/imaging/merge/signal-noise.ts';
import { hasShared, sharedPath } from '../../shared.ts';
import { linearCodes, toCodes } from './bracket-samples.ts';

/*
 * A bracket from a real linear sensor: seven exposures of a 24-patch target under seven narrow
 * bands (data of B. Llanos, Boost licence), 8 bits, with dark frames. Counts above 200 bend.
 */
const place = ['data', 'bracket-linear', 'captured_images'] as const;
const here = hasShared(...place);
const bands = [400, 450, 500, 550, 600, 650, 700] as const;
const milliseconds = [25, 50, 100, 250, 500, 2000, 3916] as const;
const clip = 200 / 255;

async function grey(path: string): Promise<{ data: Float32Array; width: number }> {
  const picture = sharp(path).toColourspace('b-w').raw();
  const { data, info } = await picture.toBuffer({ resolveWithObject: true });
  return { data: Float32Array.from(data), width: info.width };
}

const folders = {
  dark: sharedPath(...place, 'dark_frames'),
  light: sharedPath(...place, 'images_filtered_light', 'color_checker'),
};

async function darkFrame(ms: number): Promise<Float32Array> {
  const files = readdirSync(folders.dark).filter((f) => f.includes(`_${ms}ms_`));
  const all = await Promise.all(files.map((f) => grey(`${folders.dark}/${f}`)));
  return all[0].data.map((_, i) => all.reduce((s, d) => s + d.data[i], 0) / all.length);
}

/**
 * Dark-subtracted signal, 1 at code 255, of every fifteenth pixel (the mosaic of colours repeats
 * every two). A full pixel spills into its neighbours, so a count stands only where all nine
 * around it are below 200; the others are put to 1, above the clip.
 */
async function frame(band: number, ms: number): Promise<Float32Array> {
  const [file] = readdirSync(folders.light).filter((f) => f.includes(`_${band}nm_${ms}ms_`));
  const [light, dark] = [await grey(`${folders.light}/${file}`), await darkFrame(ms)];
  const net = light.data.map((v, i) => Math.max(0, v - dark[i]) / 255);
  const around = [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((x) => y * light.width + x));
  return net
    .map((v, i) => (around.some((step) => net[i + step] >= clip) ? 1 : v))
    .filter((_, i) => i % 15 === 0);
}

const everything = (1 << milliseconds.length) - 1;
const members = (set: number) => milliseconds.flatMap((_, k) => ((set >> k) & 1 ? [k] : []));

/**
 * Which frames hold a pixel, as bits: 20 to 200 counts, the bounds of the note beside the data, as
 * the whole bracket predicts them. Each frame's own counts would choose by its own noise.
 */
function holders(
  frames: readonly Float32Array[],
  seconds: readonly number[],
  whole: Float32Array,
): Uint8Array {
  return Uint8Array.from(whole, (radiance, i) =>
    seconds.reduce((set, t, k) => {
      const [signal, sample] = [radiance * t, frames[k][i]];
      return set | (signal >= 20 / 255 && signal < clip && sample < clip ? 1 << k : 0);
    }, 0),
  );
}

describe.skipIf(!here)('a real linear bracket', () => {
  test.each(bands)(
    'at %i nm gives the same radiance from any two disjoint subsets, within 2 percent in the median',
    async (band) => {
      const frames = await Promise.all(milliseconds.map((ms) => frame(band, ms)));
      const marked = milliseconds.map((ms) => ms / 1000);
      const { seconds } = exposureTimes(frames, marked, { clip, low: 20 / 255 });
      const found = noiseFromFrames(frames, seconds, { clip, rounding: () => 1 / 12 / 255 ** 2 });
      if (!found.ok) throw new Error(found.reason);
      const variance = (s: number) => signalVariance(found.value, s) + 1 / 12 / 255 ** 2;

      const merged = new Map<number, Float32Array>();
      const codes = frames.map(toCodes);
      for (let set = 1; set <= everything; set += 1) {
        const own = members(set);
        const model = { seconds: own.map((k) => seconds[k]), clip, variance };
        const radiance = new Float32Array(codes[0].length);
        const samples = own.map((k) => ({ codes: codes[k], signals: linearCodes }));
        exposureMerger(model).merge(samples, 0, radiance.length, radiance);
        merged.set(set, radiance);
      }
      const held = holders(frames, seconds, merged.get(everything) ?? frames[0]);
      let [worst, compared] = [0, 0];
      for (const [a, first] of merged) {
        for (const [b, second] of merged) {
          if ((a & b) !== 0 || a >= b) continue;
          const ratios: number[] = [];
          for (let i = 0; i < first.length; i += 1) {
            if ((held[i] & a) !== 0 && (held[i] & b) !== 0) ratios.push(first[i] / second[i]);
          }
          if (ratios.length < 100) continue;
          compared += 1;
          const off = Math.abs(median(ratios) - 1);
          worst = Math.max(worst, off);
        }
      }
      expect(compared).toBeGreaterThan(200);
      expect(worst).toBeLessThan(0.02);
    },
    30_000,
  );
});
