/**
 * What tiling costs, beside sharp's own pyramid and `vips dzsave` of the same file with the same
 * JPEG settings. Each run is a process of its own, measured by its CPU time and its largest
 * resident size; runs take turns, and the least of each counts, since other work on the machine
 * only ever adds.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sharp } from '../../src/raster/libvips.ts';
import { levelShapes, tileAddress } from '../../src/raster/pyramid-geometry.ts';
import { writePicture } from '../../src/raster/write-picture.ts';
import { platePicture } from '../../tests/raster/test-pictures.ts';
import { lower, type BenchRow } from './row.ts';
import { measured, type TilingMode } from './tiling/measured.ts';

const size = { width: 6000, height: 5000 };
const tile = 512;
const turns = 3;

export default async function tiling(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'mirrorleaf-bench-'));
  try {
    return [...(await onePlate(folder)), await largePlate(folder)];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** CPU time, bytes and light on 30 megapixels of 16 bits. */
async function onePlate(folder: string): Promise<BenchRow[]> {
  const data = platePicture(size.width, size.height);
  const picture = { ...size, channels: 3, depth: 16, data, format: 'tiff' } as const;
  const [plate, tagged] = [join(folder, 'plate.tif'), join(folder, 'tagged.tif')];
  await writePicture(plate, { ...picture, profile: 'srgb' });
  await writePicture(tagged, { ...picture, profile: await widerProfile() });

  const hasVips = spawnSync('vips', ['--version']).error === undefined;
  const none = Infinity;
  const least = { ours: none, plain: none, vips: none, icc: none, plainIcc: none };
  const run = (name: keyof typeof least, mode: TilingMode, path: string): void => {
    const { cpuSeconds } = measured(mode, path, join(folder, name));
    least[name] = Math.min(least[name], cpuSeconds);
  };
  for (let turn = 0; turn < turns; turn += 1) {
    run('ours', 'ours', plate);
    run('plain', 'plain', plate);
    if (hasVips) run('vips', 'vips', plate);
    run('icc', 'ours', tagged);
    run('plainIcc', 'plain-icc', tagged);
  }
  const beside = hasVips ? 'vips' : 'plain';
  const bytes = { ours: tileBytes(join(folder, 'ours')), other: allBytes(join(folder, beside)) };
  const truth = meanLuminance(data, 65535);
  const [ourError, plainError] = [
    await worstLevelError(join(folder, 'ours'), truth),
    await worstLevelError(join(folder, 'plain'), truth),
  ];
  const ratio = (name: string, own: number, other: number, beside: string, goal: number) =>
    lower('tiling', name, 'x', own / other, goal, { name: beside, value: other });
  const encoded = 'sharp tile(), encoded light';
  const converted = 'sharp tile() with profile conversion, CPU s';
  const tiles = `${hasVips ? 'vips dzsave' : 'sharp tile()'}, bytes of tiles`;
  return [
    ratio('linear_cpu_ratio_30mp', least.ours, least.plain, `${encoded}, CPU s`, 1.6),
    ratio('linear_cpu_ratio_icc', least.icc, least.plainIcc, converted, 0.9),
    ...(hasVips
      ? [ratio('linear_cpu_ratio_vips', least.ours, least.vips, 'vips dzsave, CPU s', 1.6)]
      : []),
    ratio('bytes_ratio', bytes.ours, bytes.other, tiles, 1.03),
    lower('tiling', 'level_mean_error_percent', '%', ourError, 0.3, {
      name: encoded,
      value: plainError,
    }),
  ];
}

/** Resident size on a JPEG of 49 megapixels: a real plate where it is there. */
async function largePlate(folder: string): Promise<BenchRow> {
  const real = join(
    import.meta.dirname,
    '../../../shared/data/plates/portrait-glass-plate-49mp.jpg',
  );
  const made = join(folder, 'large.jpg');
  if (!existsSync(real)) {
    const [width, height] = [6035, 8212];
    const data = Uint8Array.from(platePicture(width, height), (v) => v >> 8);
    const picture = { width, height, channels: 3, depth: 8, data, profile: 'srgb' } as const;
    await writePicture(made, { ...picture, format: 'jpeg' });
  }
  const path = existsSync(real) ? real : made;
  const { residentMegabytes } = measured('ours', path, join(folder, 'large'));
  const plain = measured('plain', path, join(folder, 'large-plain')).residentMegabytes;
  return lower('tiling', 'rss_49mp_mb', 'MB', residentMegabytes, 300, {
    name: 'sharp tile(), encoded light',
    value: plain,
  });
}

/** Bytes of our tiles alone: the pictures that the other pyramids have too. */
function tileBytes(root: string): number {
  return levelShapes(size.width, size.height, tile)
    .flatMap((level) => levelTiles(level.factor))
    .reduce((sum, address) => sum + statSync(join(root, address)).size, 0);
}

/** Bytes of all pictures of a pyramid that holds tiles and nothing else. */
function allBytes(root: string): number {
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jpg'))
    .reduce((sum, name) => sum + statSync(join(root, name)).size, 0);
}

function levelTiles(factor: number): string[] {
  const level = levelShapes(size.width, size.height, tile).find((l) => l.factor === factor)!;
  const found: string[] = [];
  for (let row = 0; row * tile < level.height; row += 1) {
    for (let column = 0; column * tile < level.width; column += 1) {
      found.push(`${tileAddress(size, level, tile, column, row)}/default.jpg`);
    }
  }
  return found;
}

/** Largest error of a level's mean luminance, percent of the truth, over the shrunk levels. */
async function worstLevelError(root: string, truth: number): Promise<number> {
  let worst = 0;
  for (const { factor } of levelShapes(size.width, size.height, tile).slice(1)) {
    let [sum, pixels] = [0, 0];
    for (const address of levelTiles(factor)) {
      const bytes = await sharp(join(root, address)).raw().toBuffer();
      sum += meanLuminance(bytes, 255) * bytes.length;
      pixels += bytes.length;
    }
    worst = Math.max(worst, Math.abs(sum / pixels / truth - 1) * 100);
  }
  return worst;
}

/** IEC 61966-2-1, written out here so that the check does not rest on what it checks. */
function meanLuminance(codes: Uint8Array | Uint16Array, top: number): number {
  const linear = Float64Array.from({ length: top + 1 }, (_, i) =>
    i / top <= 0.04045 ? i / top / 12.92 : ((i / top + 0.055) / 1.055) ** 2.4,
  );
  let sum = 0;
  for (let i = 0; i < codes.length; i += 3) {
    sum +=
      0.2126 * linear[codes[i]] + 0.7152 * linear[codes[i + 1]] + 0.0722 * linear[codes[i + 2]];
  }
  return sum / (codes.length / 3);
}

/** A profile like Adobe RGB (Debian argyll-ref); libvips' own P3 where it is not installed. */
async function widerProfile(): Promise<Buffer> {
  const installed = '/usr/share/color/argyll/ref/ClayRGB1998.icm';
  if (existsSync(installed)) return readFileSync(installed);
  const dot = sharp({ create: { width: 1, height: 1, channels: 3, background: '#000' } });
  const { icc } = await sharp(await dot.withIccProfile('p3').png().toBuffer()).metadata();
  if (!icc) throw new Error('libvips wrote no P3 profile.');
  return icc;
}
