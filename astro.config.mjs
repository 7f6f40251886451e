/**
 * How the pages are made: a folder of static files that works under any path of any host, with
 * a content security policy, our own fonts and no request to anybody else.
 *
 * The environment names the folders, so that a museum can keep its plates outside this project:
 * MIRRORLEAF_CONTENT, MIRRORLEAF_OUT and MIRRORLEAF_BASE (`src/pipeline/places.ts`).
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unified } from '@astrojs/markdown-remark';
import { defineConfig, fontProviders } from 'astro/config';
import { parse } from 'yaml';
import exhibit from './src/integration/index.ts';
import { diskLookup } from './src/markdown/disk-lookup.ts';
import { markdownPlugins } from './src/markdown/plugins.ts';
import { exhibitBase, findPlaces } from './src/pipeline/places.ts';
import { collectionSchema } from './src/records/collection.ts';
import { edtfLanguage } from './src/records/edtf-words.ts';

const places = findPlaces();

/**
 * Address and language of the exhibit. What is wrong with `collection.md` is told by the
 * pipeline's own check, with its line; here it only counts as silence.
 */
function collection() {
  try {
    const head = /^\uFEFF?---\r?\n([\s\S]*?)\r?\n---/.exec(
      readFileSync(join(places.content, 'collection.md'), 'utf8'),
    );
    const { address, languages } = collectionSchema.parse(parse(head[1]));
    return { address, language: edtfLanguage(languages[0]) };
  } catch {
    return { address: undefined, language: 'en' };
  }
}

const { address, language } = collection();
const base = exhibitBase();

// Ranges of the subsets as the font package states them; the rare letters load on demand.
const latin = [
  'U+0000-00FF',
  'U+0131',
  'U+0152-0153',
  'U+02BB-02BC',
  'U+02C6',
  'U+02DA',
  'U+02DC',
  'U+0304',
  'U+0308',
  'U+0329',
  'U+2000-206F',
  'U+20AC',
  'U+2122',
  'U+2191',
  'U+2193',
  'U+2212',
  'U+2215',
  'U+FEFF',
  'U+FFFD',
];
const latinExtended = [
  'U+0100-02BA',
  'U+02BD-02C5',
  'U+02C7-02CC',
  'U+02CE-02D7',
  'U+02DD-02FF',
  'U+0304',
  'U+0308',
  'U+0329',
  'U+1D00-1DBF',
  'U+1E00-1E9F',
  'U+1EF2-1EFF',
  'U+2020',
  'U+20A0-20AB',
  'U+20AD-20C0',
  'U+2113',
  'U+2C60-2C7F',
  'U+A720-A7FF',
];

/**
 * A family in two: the letters of Western Europe, which every page needs and the layout
 * preloads, and the rarer ones, which load when a page holds one of them.
 */
function family(name, variable, folder, styles, weight, fallbacks) {
  const part = (subset, unicodeRange) => ({
    variants: styles.map((style) => ({
      src: [`@fontsource-variable/${folder}/files/${folder}-${subset}-wght-${style}.woff2`],
      weight,
      style,
      unicodeRange,
    })),
  });
  const provider = fontProviders.local();
  return [
    { name, cssVariable: variable, provider, fallbacks, options: part('latin', latin) },
    {
      name: `${name} more`,
      cssVariable: `${variable}-more`,
      provider,
      fallbacks: [],
      options: part('latin-ext', latinExtended),
    },
  ];
}

export default defineConfig({
  site: address,
  base,
  outDir: places.out,
  output: 'static',
  trailingSlash: 'always',
  // What is kept of a build's pages belongs to this content folder.
  cacheDir: places.pages,
  // No underscore in front: some hosts do not serve folders that have one.
  build: { format: 'directory', assets: 'assets' },
  integrations: [exhibit()],
  devToolbar: { enabled: false },
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'none'",
      ],
    },
  },
  fonts: [
    ...family('Newsreader', '--font-reading', 'newsreader', ['normal', 'italic'], '200 800', [
      'Georgia',
      'serif',
    ]),
    ...family('Instrument Sans', '--font-label', 'instrument-sans', ['normal'], '400 700', [
      'Arial',
      'sans-serif',
    ]),
  ],
  markdown: {
    processor: unified(
      markdownPlugins({ base, language, lookup: diskLookup(places.content, places.records) }),
    ),
    // The highlighter writes style attributes, which the policy refuses.
    syntaxHighlight: false,
  },
  vite: { cacheDir: './.cache/vite' },
});
