/**
 * Builds the demonstration once for all tests of pages, under a sub-path as many hosts have
 * it, and serves it as a static host would. `inject('siteUrl')` gives the address, with the
 * base path and a slash at the end; `inject('siteFolder')` the built folder.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { buildExhibit } from '../../src/pipeline/build.ts';
import { findPlaces } from '../../src/pipeline/places.ts';
import { serveStatic } from '../../src/pipeline/static-server.ts';

declare module 'vitest' {
  interface ProvidedContext {
    siteUrl: string;
    siteFolder: string;
    siteBase: string;
  }
}

const base = '/exhibit/';

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  // A folder that is there already (`MIRRORLEAF_TEST_SITE`) saves the build while writing tests.
  const ready = process.env['MIRRORLEAF_TEST_SITE'];
  const out = ready ?? (await mkdtemp(join(tmpdir(), 'mirrorleaf-site-')));
  if (ready === undefined) {
    process.env['MIRRORLEAF_BASE'] = base;
    const code = await buildExhibit({ places: findPlaces({ out }), quiet: true });
    if (code !== 0) throw new Error(`The demonstration did not build (exit code ${code}).`);
  }
  const server = await serveStatic(out, base);
  project.provide('siteUrl', server.url);
  project.provide('siteFolder', out);
  project.provide('siteBase', base);
  return async () => {
    await server.close();
    if (ready === undefined) await rm(out, { recursive: true, force: true });
  };
}
