import type { AstroPrerenderer } from 'astro';
import { expect, test } from 'vitest';
import { madeFirst } from '../../src/integration/made-first.ts';

test('pages that are waited for come first, all others in the order they had', async () => {
  const names = [
    'catalogue/',
    'fr/plates/bell/',
    '/plates/arch/',
    'plates/arch/captures/',
    'plates/',
  ];
  const standard = {
    name: 'standard',
    getStaticPaths: () => Promise.resolve(names.map((pathname) => ({ pathname }))),
  } as unknown as AstroPrerenderer;
  const paths = await madeFirst(new Set(['plates/arch', 'fr/plates/bell']))(
    standard,
  ).getStaticPaths();
  expect(paths.map(({ pathname }) => pathname)).toEqual([
    'fr/plates/bell/',
    '/plates/arch/',
    'catalogue/',
    'plates/arch/captures/',
    'plates/',
  ]);
});
