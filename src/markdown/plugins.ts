/** The one list of steps from Markdown to page, for Astro and for our own check alike. */
import rehypeSanitize from 'rehype-sanitize';
import remarkDirective from 'remark-directive';
import type { EdtfLanguage } from '../records/edtf-words.ts';
import { addressesStep } from './addresses-step.ts';
import { cleanSchema } from './clean.ts';
import { directivesStep } from './directives.ts';
import type { MarkdownLookup } from './lookup.ts';
import { provenanceStep } from './provenance-step.ts';

export interface MarkdownOptions {
  /** With its slash at the end. */
  readonly base: string;
  /** Language of the dates and gaps of a provenance. */
  readonly language: EdtfLanguage;
  readonly lookup: MarkdownLookup;
}

/** Options for `unified()` of `@astrojs/markdown-remark`. */
export function markdownPlugins({ base, language, lookup }: MarkdownOptions) {
  return {
    remarkPlugins: [
      remarkDirective,
      [directivesStep, { lookup }],
      [provenanceStep, { language }],
    ] as [
      typeof remarkDirective,
      [typeof directivesStep, { lookup: MarkdownLookup }],
      [typeof provenanceStep, { language: EdtfLanguage }],
    ],
    rehypePlugins: [
      [rehypeSanitize, cleanSchema],
      [addressesStep, { base, lookup }],
    ] as [
      [typeof rehypeSanitize, typeof cleanSchema],
      [typeof addressesStep, { base: string; lookup: MarkdownLookup }],
    ],
  };
}
