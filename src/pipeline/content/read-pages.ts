/** The texts beside the plates: techniques, lessons, glossary, about. */
import { join } from 'node:path';
import { finding, type Finding } from '../../records/finding.ts';
import { slug as slugSchema } from '../../records/fields.ts';
import { overlayName } from '../../records/overlay.ts';
import { pageSchema } from '../../records/page.ts';
import { readFrontMatter } from '../../records/yaml-door.ts';
import type { ContentPage } from '../content.ts';
import { listFolder } from './list-folder.ts';
import { readText } from './read-text.ts';

interface PagesRead {
  readonly pages: readonly ContentPage[];
  readonly findings: readonly Finding[];
}

/** Read every page; those with faults are left out and their faults told. */
export async function readPages(folder: string, root: string): Promise<PagesRead> {
  const pages: ContentPage[] = [];
  const findings: Finding[] = [];
  const add = async (file: string, kind: ContentPage['kind'], optional: boolean) => {
    const text = await readText(join(folder, file), { root, plate: '', file });
    if (!text.ok) {
      if (!(optional && text.absent)) findings.push(text.finding);
      return;
    }
    const id = file.replace(/^.*\/|\.md$/g, '');
    if (!slugSchema.safeParse(id).success) {
      const message = `${file} cannot be an address. Expected lower-case letters, digits and single hyphens.`;
      const about = { level: 'error', plate: '', file, code: 'bad-slug' } as const;
      findings.push(finding({ ...about, message, remedy: 'Rename the file.' }));
      return;
    }
    const read = readFrontMatter({ plate: '', file, text: text.text }, pageSchema);
    if (!read.ok) findings.push(...read.findings);
    else {
      const { value: record, body, bodyLine } = read;
      pages.push({ kind, id, file, record, body, bodyLine });
    }
  };
  const kinds = [
    ['techniques', 'technique'],
    ['lessons', 'lesson'],
  ] as const;
  for (const [name, kind] of kinds) {
    const listing = await listFolder(join(folder, name), root, '', name);
    findings.push(...listing.findings);
    for (const entry of listing.entries) {
      const original = entry.name.endsWith('.md') && !overlayName(entry.name);
      if (entry.kind === 'file' && original) {
        await add(`${name}/${entry.name}`, kind, false);
      }
    }
  }
  for (const file of ['glossary.md', 'about.md']) await add(file, 'page', true);
  return { pages, findings };
}
