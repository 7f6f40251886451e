/** Writes the provenance section as `<ol class="provenance">`, dates in words, gaps as items. */
import type { ListItem, PhrasingContent, Root } from 'mdast';
import { timeValue, type EdtfDate } from '../records/edtf.ts';
import { edtfLanguage, formatEdtf, type EdtfLanguage } from '../records/edtf-words.ts';
import type { VFile } from 'vfile';
import { leadingDate, provenanceLists, type Gap } from './provenance.ts';
import { textFile } from './text-file.ts';

const gapWords: Readonly<Record<EdtfLanguage, (years: string) => string>> = {
  en: (years) => `No record for ${years}.`,
  fr: (years) => `Rien n’est connu pour ${years}.`,
  de: (years) => `Für ${years} ist nichts belegt.`,
  es: (years) => `No hay datos para ${years}.`,
};

export function gapSentence({ from, to }: Gap, language: EdtfLanguage): string {
  return gapWords[language](from === to ? String(from) : `${from}–${to}`);
}

/** An element of our own that remark-rehype writes as its data says. */
function element(
  name: string,
  properties: Readonly<Record<string, unknown>>,
  text: string,
): PhrasingContent {
  const data = { hName: name, hProperties: properties, hChildren: [{ type: 'text', value: text }] };
  return { type: 'emphasis', children: [], data } as unknown as PhrasingContent;
}

function dateElement(date: EdtfDate, language: EdtfLanguage): PhrasingContent {
  const words = formatEdtf(date, language);
  const value = date.interval || typeof date.from === 'string' ? null : timeValue(date.from);
  // HTML has no value for an interval or a decade, and a time element must have one.
  if (value === null) return element('span', { className: ['date'] }, words);
  return element('time', { className: ['date'], dateTime: value }, words);
}

function putDate(item: ListItem, date: EdtfDate, language: EdtfLanguage): void {
  const paragraph = item.children[0];
  if (paragraph.type !== 'paragraph' || paragraph.children[0].type !== 'text') return;
  const [first, ...rest] = paragraph.children;
  const text = first.value.slice(leadingDate(first.value)?.length ?? 0);
  paragraph.children = [
    dateElement(date, language),
    { type: 'text', value: ' ' },
    { ...first, value: text },
    ...rest,
  ];
}

function gapItem(gap: Gap, language: EdtfLanguage): ListItem {
  const text = { type: 'text' as const, value: gapSentence(gap, language) };
  const data = { hProperties: { className: ['gap'] } };
  return {
    type: 'listItem',
    spread: false,
    children: [{ type: 'paragraph', children: [text] }],
    data,
  };
}

/** remark plugin. A translation has dates in its own language. */
export function provenanceStep(options: { readonly language: EdtfLanguage }) {
  return (tree: Root, file?: VFile): void => {
    const own = textFile(file?.path ?? '').language;
    const language = own === null ? options.language : edtfLanguage(own);
    for (const { list, items } of provenanceLists(tree)) {
      list.ordered = true;
      list.start = null;
      list.data = { ...list.data, hProperties: { className: ['provenance'] } };
      list.children = items.flatMap(({ node, date, gapBefore }) => {
        if (date) putDate(node, date, language);
        return gapBefore ? [gapItem(gapBefore, language), node] : [node];
      });
    }
  };
}
