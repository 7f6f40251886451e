/**
 * Two projects: `unit` needs nothing but the sources; `site` builds the demonstration once and
 * looks at it in a browser.
 */
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

const root = join(import.meta.dirname, '..');

export default defineConfig({
  root,
  test: {
    root,
    // Pictures and native code: separate processes, so that one crash is one failure.
    pool: 'forks',
    // Left to itself, Vitest leaves one of two cores idle.
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'unit',
          root,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/site/**'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'site',
          root,
          include: ['tests/site/**/*.test.ts'],
          globalSetup: ['tests/site/built-site.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // One browser at a time: two of them on two cores make every wait unreliable.
          fileParallelism: false,
        },
      },
    ],
  },
});
