/** Front matter of the texts beside the plates: techniques, lessons, glossary, about. */
import { z } from 'zod';
import { id, slug, text } from './fields.ts';
import { setupKinds } from './vocabulary.ts';

export const pageSchema = z.strictObject({
  title: text,
  /** One or two sentences for the list of pages. */
  summary: text.optional(),
  /** Place in that list, from 1. */
  order: z.number().optional(),
  /** The kind of set-up that a technique page is about. */
  setup: z.enum(setupKinds).optional(),
  /** A plate, and a view of it, that shows what the text is about. */
  example: z.strictObject({ plate: slug, view: id.optional() }).optional(),
  /** A drawing that moves with the example's plate: `turning` is the section of eye, plate and room. */
  live: z.enum(['turning']).optional(),
  /** A question for the class; its answer has a page of its own and is not printed with it. */
  question: text.optional(),
  answer: text.optional(),
});

export type PageRecord = z.output<typeof pageSchema>;
