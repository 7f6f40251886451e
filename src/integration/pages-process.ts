/**
 * Astro's build in a process of its own, which is begun before it has anything to do: it loads
 * Astro and what is kept of earlier readings while the content is still being looked through, and
 * waits to be told the rest. It ends with the process that began it.
 */
import { once } from 'node:events';
import { enableCompileCache } from 'node:module';
import { exit } from 'node:process';
import { BuildStopped } from '../pipeline/build-stopped.ts';
import { readAhead } from '../pipeline/kept-readings.ts';
import { findPlaces } from '../pipeline/places.ts';

enableCompileCache();
process.on('disconnect', () => {
  exit(1);
});

const told = once(process, 'message');
const [{ build }] = await Promise.all([import('astro'), import('../../astro.config.mjs')]);
await readAhead(findPlaces());
const [environment] = (await told) as [NodeJS.ProcessEnv];
Object.assign(process.env, environment);
try {
  // Silent: its errors are still printed; what is left out is a line for every page.
  await build({ logLevel: 'silent' });
  exit(0);
} catch (error) {
  console.error(error instanceof BuildStopped ? error.message : error);
  exit(1);
}
