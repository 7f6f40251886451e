/**
 * Rules of the house, and the doors between the folders (DEVELOPERS.md, "Folders").
 * Every departure from a recommended set has its reason beside it.
 */
import js from '@eslint/js';
import astro from 'eslint-plugin-astro';
import globals from 'globals';
import tseslint from 'typescript-eslint';

/** What a folder may not import, with the sentence that a contributor reads. */
function door(files, group, message) {
  return {
    files: [`src/${files}/**/*.{ts,astro}`],
    rules: { 'no-restricted-imports': ['error', { patterns: [{ group, message }] }] },
  };
}

const libvips = ['sharp'];
const deepZoom = ['openseadragon'];
const files = ['node:*', 'fs', 'path'];
const doors = ['**/raster/**', '**/pipeline/**', '**/integration/**'];
const browser = ['**/viewer/**', '**/pages/**', '**/components/**', '**/layouts/**'];

export default tseslint.config(
  { ignores: ['dist/', 'dist.*/', '.cache/', '.astro/', 'node_modules/', 'coverage/'] },
  js.configs.recommended,
  ...tseslint.configs.recommendedTypeChecked,
  ...astro.configs.recommended,
  {
    languageOptions: {
      globals: { ...globals.node },
      parserOptions: {
        projectService: { allowDefaultProject: ['*.js', '*.mjs', 'scripts/*.mjs'] },
        tsconfigRootDir: import.meta.dirname,
        extraFileExtensions: ['.astro'],
      },
    },
    rules: {
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      // Numbers in messages are wanted: a finding names its value.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // `number | {}` style unions come from the DOM types, not from us.
      '@typescript-eslint/no-redundant-type-constituents': 'off',
      eqeqeq: 'error',
    },
  },
  {
    files: ['**/*.{js,mjs}'],
    ...tseslint.configs.disableTypeChecked,
  },
  {
    // Type information does not reach into component markup.
    files: ['**/*.astro', '**/*.astro/*.ts'],
    ...tseslint.configs.disableTypeChecked,
    languageOptions: {
      globals: { ...globals.browser, ...globals.node },
      parserOptions: { projectService: false, project: null },
    },
  },
  {
    // French sets spaces that do not break before its colons and within its quotation marks.
    files: ['src/words/**/*.ts'],
    rules: { 'no-irregular-whitespace': ['error', { skipTemplates: true }] },
  },
  { files: ['src/viewer/**/*.ts'], languageOptions: { globals: { ...globals.browser } } },
  door(
    '{imaging,optics}',
    [...libvips, ...deepZoom, ...files, ...doors, ...browser, 'zod', 'astro', 'astro:*'],
    'Numbers only: no files, no libraries for pictures, no pages (DEVELOPERS.md, Folders).',
  ),
  door(
    '{records,publish}',
    [...libvips, ...deepZoom, ...files, ...doors, ...browser, 'astro', 'astro:*'],
    'Records and documents are pure: text in, values out (DEVELOPERS.md, Folders).',
  ),
  door(
    'raster',
    [...deepZoom, '**/pipeline/**', ...browser, 'astro', 'astro:*'],
    'src/raster turns files into planes and back; it knows no stages and no pages.',
  ),
  door(
    'pipeline',
    [...libvips, ...deepZoom, ...browser, 'astro', 'astro:*'],
    'Stages read and write pictures through src/raster, the only door to sharp.',
  ),
  door(
    '{integration,markdown}',
    [...libvips, ...deepZoom, '**/raster/**', ...browser],
    'Hooks and plugins check and link; pictures are made by src/pipeline beforehand.',
  ),
  door(
    '{pages,layouts,components}',
    [...libvips, ...deepZoom, ...doors],
    'Pages show records. Pictures are made by src/pipeline; OpenSeadragon is loaded by src/viewer.',
  ),
  door(
    'viewer',
    [...libvips, ...files, ...doors, 'astro', 'astro:*'],
    'The viewer runs in the browser: pure numbers and records only.',
  ),
  {
    files: ['src/viewer/**/*.ts'],
    ignores: ['src/viewer/osd.ts', 'src/viewer/osd/**'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: [...libvips, ...files, ...doors, 'astro', 'astro:*'],
              message: 'The viewer runs in the browser: pure numbers and records only.',
            },
            {
              group: deepZoom,
              allowTypeImports: true,
              message: 'OpenSeadragon is loaded through src/viewer/osd.ts alone.',
            },
          ],
        },
      ],
    },
  },
);
