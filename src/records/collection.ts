/** `content/collection.md`: whose exhibit this is, and what its plates have in common. */
import { z } from 'zod';
import { rightsUri, slug, text, webAddress } from './fields.ts';
import { colour, footerLine, themeSchema } from './theme.ts';

const contactPhrase = 'an e-mail address or a web address';
const languagePhrase = 'a language tag, such as "en" or "fr-CA"';

export const collectionSchema = z.strictObject({
  /** Name of the exhibit. */
  title: text,
  /** Who publishes it. */
  institution: z.strictObject({
    name: text,
    place: text.optional(),
    homepage: webAddress.optional(),
  }),
  /** Where a reader may write to: an e-mail address or a page. */
  contact: z.union([z.email(contactPhrase), webAddress], contactPhrase).optional(),
  /**
   * The address the exhibit will have, with its path: `https://example.org/plates/`.
   * Interchange documents (IIIF) need absolute addresses.
   */
  address: webAddress.optional(),
  /** Languages of the interface, the first is the default. BCP 47. */
  languages: z
    .array(z.string(languagePhrase).regex(/^[a-z]{2,3}(-[A-Za-z0-9]+)*$/, languagePhrase))
    .min(1)
    .default(['en']),
  /** Rights of the pictures where a plate says nothing else: a registry URI. */
  rights: rightsUri.optional(),
  /** Credit line where a plate says nothing else. */
  credit: text.optional(),
  /** Accent colour as #rrggbb; the brass of a mat where nothing is said. */
  accent: colour.optional(),
  /** How the pages look, beyond the accent. */
  theme: themeSchema.optional(),
  /** Lines of the footer, such as opening hours or a legal notice. */
  footer: z.array(footerLine).default([]),
  /** Slug of the plate that opens the home page; the first one where nothing is said. */
  opening: slug.optional(),
  /** A word to the reader before the collection, such as a warning about wording. */
  advisory: text.optional(),
});

export type CollectionRecord = z.output<typeof collectionSchema>;
