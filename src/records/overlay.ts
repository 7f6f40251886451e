/**
 * What a museum says in a further language: `plate.fr.md` beside `plate.md`, and likewise for
 * the collection and the pages. An overlay has only what can be translated, every part of it
 * optional; numbers, regions, dates and rights stand once, in the original. The words of
 * communities and of another time are never translated here: they are quoted.
 */
import { z } from 'zod';
import { id, text } from './fields.ts';
import { conditionTerms } from './vocabulary.ts';

const said = text.optional();

/** Entries without an id or a term stand in the order of the original. */
export const plateOverlaySchema = z.strictObject({
  title: said,
  process: z.strictObject({ text: said }).optional(),
  maker: z.array(z.strictObject({ name: said, role: said, place: said })).optional(),
  place: said,
  housing: z
    .strictObject({ case: said, mat: said, preserver: said, glass: said, seal: said })
    .optional(),
  marks: z.array(z.strictObject({ position: said })).optional(),
  handColouring: said,
  description: z.strictObject({ positive: said, negative: said }).optional(),
  describedBy: z.strictObject({ name: said }).optional(),
  credit: said,
  advisory: said,
  wording: z.array(z.strictObject({ note: said })).optional(),
  /** The same term twice: the first one here is the first one there. */
  condition: z.array(z.strictObject({ term: z.enum(conditionTerms), note: said })).optional(),
  spots: z.array(z.strictObject({ id, title: said, note: said })).optional(),
  looks: z
    .array(
      z.strictObject({
        id,
        title: said,
        steps: z.array(z.strictObject({ text: said })).optional(),
      }),
    )
    .optional(),
});

export const collectionOverlaySchema = z.strictObject({
  title: said,
  institution: z.strictObject({ name: said, place: said }).optional(),
  credit: said,
  footer: z.array(z.strictObject({ text: said })).optional(),
  advisory: said,
});

export const pageOverlaySchema = z.strictObject({
  title: said,
  summary: said,
  question: said,
  answer: said,
});

export type PlateOverlay = z.output<typeof plateOverlaySchema>;
export type CollectionOverlay = z.output<typeof collectionOverlaySchema>;
export type PageOverlay = z.output<typeof pageOverlaySchema>;

/** `plate.fr.md`: which original, and in which language; null for an original itself. */
export function overlayName(file: string): { original: string; language: string } | null {
  const parts = /^([^.]+)\.([^.]+)\.md$/.exec(file);
  return parts && { original: `${parts[1]}.md`, language: parts[2] };
}
