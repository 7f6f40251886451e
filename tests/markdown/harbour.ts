/** One plate for the Markdown tests to refer to, and a text of its made into a page. */
import { createMarkdownProcessor } from '@astrojs/markdown-remark';
import { checkMarkdown } from '../../src/markdown/check.ts';
import type { MarkdownLookup } from '../../src/markdown/lookup.ts';
import { markdownPlugins } from '../../src/markdown/plugins.ts';
import type { EdtfLanguage } from '../../src/records/edtf-words.ts';
import { findingText } from '../../src/records/finding-text.ts';

export const lookup: MarkdownLookup = {
  plate: (slug) =>
    slug === 'harbour' || slug === 'covered'
      ? {
          title: 'The harbour',
          covered: slug === 'covered',
          spots: [
            { id: 'masts', title: 'The masts', region: { x: 1, y: 2, width: 3, height: 4 } },
            {
              id: 'quay',
              title: 'The quay',
              region: { x: 5, y: 6, width: 7, height: 8 },
              view: 'raking',
            },
          ],
          looks: [{ id: 'round', title: 'Round the basin' }],
        }
      : null,
  plates: () => ['covered', 'harbour'],
  picture: (slug, view = 'normal') => ({
    view,
    path: `plates/${slug}/views/${view}/full/800,600/0/default.jpg`,
    frame: { width: 1600, height: 1200 },
  }),
};

/** The HTML of a text of `plates/harbour/plate.md` under the base path `/museum/`. */
export async function page(
  text: string,
  language: EdtfLanguage = 'en',
  path = 'plates/harbour/plate.md',
) {
  const steps = markdownPlugins({ base: '/museum/', language, lookup });
  const processor = await createMarkdownProcessor({ syntaxHighlight: false, ...steps } as never);
  const { code } = await processor.render(text, { fileURL: new URL(`file:///content/${path}`) });
  return code;
}

/** What the check says about such a text, which begins on line 11 of its file. */
export async function faults(text: string, path = 'plates/harbour/plate.md'): Promise<string[]> {
  const plate = path.startsWith('plates/') ? 'harbour' : '';
  const pages = new Set(['', 'plates/', 'lessons/left-is-right/', 'glossary/']);
  const file = plate ? 'plate.md' : path;
  const found = await checkMarkdown(file, text, { plate, path, firstLine: 11, lookup, pages });
  return found.map(findingText);
}
