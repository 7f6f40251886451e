/**
 * One measured run of `../tiling.ts`: tile one file in one way, then say what it took. The time
 * counts from when the libraries are loaded, as they are in a build; the thread that our way
 * starts for each picture is counted.
 */
import { existsSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';

export interface TilingRun {
  /** User and system time of the whole process, its threads included. */
  readonly cpuSeconds: number;
  /** Largest resident size, 10^6 bytes. */
  readonly residentMegabytes: number;
}

function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** A child's `maxRSS` starts at what its parent held when it forked; Linux knows the child's own. */
function residentMegabytes(): number {
  const status = '/proc/self/status';
  const own = existsSync(status) && /VmHWM:\s+(\d+) kB/.exec(readFileSync(status, 'utf8'));
  return ((own ? Number(own[1]) : process.resourceUsage().maxRSS) * 1024) / 1e6;
}

const [mode, path, out] = process.argv.slice(2);
const tile = mode === 'ours' ? await ours() : await theirs();
const before = cpuSeconds();
await tile();
const run: TilingRun = {
  cpuSeconds: cpuSeconds() - before,
  residentMegabytes: residentMegabytes(),
};
process.stdout.write(JSON.stringify(run));

async function ours(): Promise<() => Promise<unknown>> {
  const { tilePicture } = await import('../../../src/raster/tile-picture.ts');
  const job = { path, folder: out, id: 'bench', scratch: tmpdir(), tile: 512, quality: 85 };
  return () => tilePicture(job);
}

/** sharp as it comes, without the settings of this project. */
async function theirs(): Promise<() => Promise<unknown>> {
  const { default: sharp } = await import('sharp');
  return () => {
    // Without a conversion the profile is passed over, as `vips dzsave` does.
    const picture = sharp(path, { ignoreIcc: mode === 'plain' });
    if (mode === 'plain-icc') picture.withIccProfile('srgb', { attach: false });
    return picture
      .jpeg({ quality: 85, chromaSubsampling: '4:2:0' })
      .tile({ size: 512, layout: 'iiif3' })
      .toFile(out);
  };
}
