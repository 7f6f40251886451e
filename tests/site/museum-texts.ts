/** What the pages and documents of the small exhibit say of its museum's texts (`translations.ts`). */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { presentation3StrictUpgrade } from '@iiif/parser/strict';
import { describe, expect, test } from 'vitest';
import { presentationErrors } from '../publish/presentation-schema.ts';
import { htmlOf } from './pages.ts';

/** What stands in the first element that a pattern opens: its `lang` and its text. */
function element(html: string, opening: RegExp): [lang: string | undefined, text: string] {
  const found = new RegExp(`<${opening.source}([^>]*)>([^<]*)<`).exec(html);
  const [, attributes = '', text = ''] = found ?? [];
  return [/\slang="([^"]+)"/.exec(attributes)?.[1], text.trim()];
}

/** @param folder The built exhibit, once it is there. */
export function museumTexts(folder: () => string, address: string): void {
  describe('a text of the museum', () => {
    test('is in the page’s language where it is translated, in the head as well', () => {
      const html = htmlOf(folder(), 'fr/plates/first/');
      expect(/<title>([^<]*)/.exec(html)?.[1]).toBe('La première plaque · Deux plaques');
      expect(html).toContain('<meta property="og:site_name" content="Deux plaques">');
      expect(element(html, /h1/)).toEqual([undefined, 'La première plaque']);
      expect(element(html, /a href="#view=look[^"]*"/)).toEqual([undefined, 'Une tache']);
      expect(html).toMatch(/<dd[^>]*>\s*1850, Quai au Fenouil\s*<\/dd>/);
      expect(html).toContain('Le texte de la plaque');
      const data = /<script type="application\/ld\+json">(.*?)<\/script>/s.exec(html)?.[1] ?? '{}';
      expect(JSON.parse(data)).toMatchObject({
        name: 'La première plaque',
        mainEntityOfPage: { url: `${address}fr/plates/first/`, inLanguage: 'fr' },
        isPartOf: { name: 'Deux plaques' },
      });
    });

    test('is the original elsewhere, and says in which language it is', () => {
      const french = htmlOf(folder(), 'fr/plates/first/');
      expect(french).toMatch(/<p lang="en"[^>]*>\s*Brighter than the rest.\s*<\/p>/);
      expect(french).toMatch(/<span lang="en"[^>]*>\s*An unnamed maker\s*<\/span>/);
      const german = htmlOf(folder(), 'de/plates/first/');
      expect(element(german, /h1/)).toEqual(['en', 'The first plate']);
      expect(german).toMatch(/<span>1850, <\/span>\s*<span lang="en">Fennel Quay</);
      expect(german).toMatch(/<div class="as-written" lang="en">/);
      expect(element(htmlOf(folder(), 'fr/plates/'), /a href="[^"]*second\/"/)).toEqual([
        'en',
        'The second plate',
      ]);
      // In its own language it needs no mark.
      expect(htmlOf(folder(), 'plates/first/')).not.toMatch(/<(?!html|a)\w+[^>]*\slang=/);
    });

    test('is in the questions of the index, and in what the viewer is told', () => {
      const index = htmlOf(folder(), 'fr/plates/');
      expect(index).toMatch(/<span class="facet"[^>]*>\s*Quai au Fenouil\s*</);
      expect(index).not.toContain('value="Fennel Quay"');
      const stage = JSON.parse(
        readFileSync(join(folder(), 'fr/plates/first/stage.json'), 'utf8'),
      ) as {
        title: string;
        spots: { title: string; note: string }[];
      };
      expect(stage.title).toBe('La première plaque');
      expect(stage.spots[0]).toMatchObject({ title: 'Une tache', note: 'Brighter than the rest.' });
      const list = JSON.parse(
        readFileSync(join(folder(), 'fr/plates/stages.json'), 'utf8'),
      ) as object;
      expect(list).toContainEqual({ slug: 'first', title: 'La première plaque' });
    });

    test('is in the one manifest in every language that has it', () => {
      const manifest = JSON.parse(
        readFileSync(join(folder(), 'plates/first/manifest.json'), 'utf8'),
      ) as Record<string, unknown>;
      expect(manifest['label']).toEqual({ en: ['The first plate'], fr: ['La première plaque'] });
      expect(manifest['requiredStatement']).toMatchObject({
        label: { en: ['Credit'], fr: ['Crédit'], de: ['Nachweis'] },
      });
      const homepages = (manifest['homepage'] as { id: string; language: string[] }[]).map(
        ({ id, language }) => [language[0], id.slice(address.length)],
      );
      expect(homepages.slice(0, 2)).toEqual([
        ['en', 'plates/first/'],
        ['fr', 'fr/plates/first/'],
      ]);
      presentation3StrictUpgrade(structuredClone(manifest) as never, { warnings: [] });
      if (presentationErrors) expect(presentationErrors(manifest)).toEqual([]);
    });

    test('of a capture that is withheld is in no file of the exhibit, translated or not', () => {
      const files = readdirSync(folder(), { recursive: true, withFileTypes: true });
      let read = 0;
      for (const file of files.filter((one) => one.isFile())) {
        const path = join(file.parentPath, file.name);
        const bytes = readFileSync(path);
        const data = bytes[0] === 0x1f && bytes[1] === 0x8b ? gunzipSync(bytes) : bytes;
        for (const word of ['zugzwang', 'veiled-one'])
          expect(data.includes(word), path).toBe(false);
        read += 1;
      }
      expect(read).toBeGreaterThan(100);
    });
  });
}
