/** One measured run of `../tiling.ts`: tile one file in one way, then say what it took. */
import { tmpdir } from 'node:os';

export interface TilingRun {
  /** User and system time of the whole process, its threads included. */
  readonly cpuSeconds: number;
  /** Largest resident size, 10^6 bytes. */
  readonly residentMegabytes: number;
}

const [mode, path, out] = process.argv.slice(2);

if (mode === 'ours') {
  const { tilePicture } = await import('../../../src/raster/tile-picture.ts');
  await tilePicture({ path, folder: out, id: 'bench', scratch: tmpdir(), tile: 512, quality: 85 });
} else {
  // As it comes, without the settings of this project.
  const { default: sharp } = await import('sharp');
  // Without a conversion the profile is passed over, as `vips dzsave` does.
  const picture = sharp(path, { ignoreIcc: mode === 'plain' });
  if (mode === 'plain-icc') picture.withIccProfile('srgb', { attach: false });
  await picture
    .jpeg({ quality: 85, chromaSubsampling: '4:2:0' })
    .tile({ size: 512, layout: 'iiif3' })
    .toFile(out);
}

const used = process.resourceUsage();
const run: TilingRun = {
  cpuSeconds: (used.userCPUTime + used.systemCPUTime) / 1e6,
  residentMegabytes: (used.maxRSS * 1024) / 1e6,
};
process.stdout.write(JSON.stringify(run));
