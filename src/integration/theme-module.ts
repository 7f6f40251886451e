/**
 * A museum's own style sheet and logo as a module that pages import: the bundler then names
 * them by their bytes, takes along the fonts that the sheet asks for, and serves them in
 * development. What the content check refused is not in it.
 */
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { themeFile, type Theme } from '../pipeline/content/read-theme.ts';

/** Its name for `import`; typed in `src/theme-module.d.ts`. */
const name = 'virtual:exhibit-theme';

/** @param theme What is sound of it; asked for when a page first imports the module. */
export function themeModule(content: string, theme: () => Promise<Theme | null>): Plugin {
  return {
    name: 'mirrorleaf-theme',
    config: () => ({
      // The content folder may lie outside the project.
      server: { fs: { allow: ['.', content] } },
      // The policy lets pictures stand inside a style sheet, but no fonts.
      build: {
        assetsInlineLimit: (file) => (/\.(?:woff2?|ttf|otf)$/.test(file) ? false : undefined),
      },
    }),
    resolveId: (id) => (id === name ? `\0${name}` : undefined),
    load: async (id) => (id === `\0${name}` ? source(content, await theme()) : undefined),
  };
}

function source(content: string, theme: Theme | null): string {
  const path = (file: string) => JSON.stringify(join(content, file).replaceAll('\\', '/'));
  const picture = (variable: string, file: string | null | undefined) =>
    file
      ? `import ${variable} from ${path(`${file}?url&no-inline`)};`
      : `const ${variable} = undefined;`;
  return [
    theme?.hasStyle ? `import ${path(themeFile)};` : '',
    picture('logo', theme?.logo),
    picture('logoDark', theme?.logoDark),
    'export { logo, logoDark };',
  ].join('\n');
}
