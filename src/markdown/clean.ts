/**
 * What may stand in a page that was written as Markdown. Raw HTML never gets this far; this is
 * the second lock: elements and attributes that are on the list, addresses that a browser does
 * not run.
 */
import { defaultSchema, type Options } from 'rehype-sanitize';

const base = defaultSchema.attributes ?? {};

export const cleanSchema: Options = {
  ...defaultSchema,
  tagNames: [...(defaultSchema.tagNames ?? []), 'figure', 'figcaption', 'section', 'time'],
  // Ids of headings are given later; those of footnotes have their prefix already.
  clobberPrefix: '',
  attributes: {
    ...base,
    ol: [
      ...(base['ol'] ?? []).filter((entry) => entry[0] !== 'className'),
      ['className', 'provenance'],
    ],
    li: [['className', 'task-list-item', 'gap'], 'id'],
    time: ['dateTime', ['className', 'date']],
    span: [['className', 'date']],
    div: [['className', 'look-place']],
    figure: [['className', 'spot-figure'], 'dataPlate', 'dataSpot', 'dataRegion'],
    section: [
      ...(base['section'] ?? []).filter((entry) => entry[0] !== 'className'),
      ['className', 'look', 'footnotes'],
      'id',
      'dataFootnotes',
    ],
  },
  protocols: { ...defaultSchema.protocols, href: ['http', 'https', 'mailto'] },
};
