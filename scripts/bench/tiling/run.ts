/**
 * One measured run: tile one file in one way, then say what it took. The time counts from when
 * the libraries are loaded, as they are in a build; the thread that our way starts for each
 * picture is counted.
 */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { TilingRun } from './measured.ts';

const [mode, path, out, scratch] = process.argv.slice(2);
const status = '/proc/self/status';

function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** A child's `maxRSS` starts at what its parent held when it forked; Linux knows the child's own. */
function residentMegabytes(): number {
  const own = existsSync(status) && /VmHWM:\s+(\d+) kB/.exec(readFileSync(status, 'utf8'));
  return ((own ? Number(own[1]) : process.resourceUsage().maxRSS) * 1024) / 1e6;
}

/** Memory of this process that no file backs; not a number where the system does not say. */
function anonymousMegabytes(): number {
  const found = existsSync(status) && /RssAnon:\s+(\d+) kB/.exec(readFileSync(status, 'utf8'));
  return found ? (Number(found[1]) * 1024) / 1e6 : NaN;
}

function scratchMegabytes(): number {
  if (!existsSync(scratch)) return 0;
  const sizes = readdirSync(scratch).map(
    (name) => statSync(join(scratch, name), { throwIfNoEntry: false })?.size ?? 0,
  );
  return sizes.reduce((sum, size) => sum + size, 0) / 1e6;
}

const tile = mode === 'ours' ? await ours() : await theirs();
let [anonymous, scratched] = [anonymousMegabytes(), 0];
const look = setInterval(() => {
  anonymous = Math.max(anonymous, anonymousMegabytes());
  scratched = Math.max(scratched, scratchMegabytes());
}, 50);
const before = cpuSeconds();
await tile();
const run: TilingRun = {
  cpuSeconds: cpuSeconds() - before,
  residentMegabytes: residentMegabytes(),
  anonymousMegabytes: anonymous,
  scratchMegabytes: scratched,
};
clearInterval(look);
process.stdout.write(JSON.stringify(run));

async function ours(): Promise<() => Promise<unknown>> {
  const { tilePicture } = await import('../../../src/raster/tile-picture.ts');
  const job = { path, folder: out, id: 'bench', scratch, tile: 512, quality: 85 };
  return () => tilePicture({ ...job, pixelLimit: 2e9 });
}

/** sharp as it comes, without the settings of this project. */
async function theirs(): Promise<() => Promise<unknown>> {
  const { default: sharp } = await import('sharp');
  return () => {
    // Without a conversion the profile is passed over, as `vips dzsave` does.
    const picture = sharp(path, { ignoreIcc: mode === 'plain', limitInputPixels: false });
    if (mode === 'plain-icc') picture.withIccProfile('srgb', { attach: false });
    return picture
      .jpeg({ quality: 85, chromaSubsampling: '4:2:0' })
      .tile({ size: 512, layout: 'iiif3' })
      .toFile(out);
  };
}
