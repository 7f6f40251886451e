/** `plate.md` front matter: the object record. DESIGN of the words is in DEVELOPERS.md. */
import { z } from 'zod';
import { edtf, id, millimetres, region, rightsUri, slug, text, webAddress } from './fields.ts';
import { conditionTerms, orientations, processes, type Process } from './vocabulary.ts';

const processWords = Object.keys(processes) as [Process, ...Process[]];

const sizePhrase = 'a trade name, such as "sixth", or [width, height] in millimetres';

export const plateSchema = z.strictObject({
  /** Title as a curator would set it on a label. */
  title: text,
  /** The museum's own number. */
  objectNumber: text.optional(),
  /** A lasting identifier that the museum has given the plate, as an address (ARK, DOI ...). */
  identifier: webAddress.optional(),
  /** Slugs that the plate was published under before, the first one first: they lead on here. */
  formerly: z.array(slug).default([]),
  /** What was published and changed when, for the feed; the first entry is the publication. */
  changes: z.array(z.strictObject({ date: edtf, note: text })).default([]),
  /** What kind of plate; `{ name: other, text: ... }` for anything else. */
  process: z.union([
    z.enum(processWords),
    z.strictObject({
      name: z.enum(processWords),
      text: text.optional(),
      aat: webAddress.optional(),
    }),
  ]),
  /** Who made it, as far as known. */
  maker: z
    .array(z.strictObject({ name: text, role: text.optional(), place: text.optional() }))
    .default([]),
  /** When it was made, EDTF (ISO 8601-2 level 1). */
  date: edtf.optional(),
  /** Where it was made. */
  place: text.optional(),
  /** A trade name ("sixth") or `[width, height]` in millimetres as the camera sees it. */
  size: z.union([text, z.tuple([millimetres, millimetres], sizePhrase)], sizePhrase).optional(),
  /** `laterally-reversed` as most mirror plates are, or `right-reading`. */
  orientation: z.enum(orientations).default('laterally-reversed'),
  /** What the plate is kept in. */
  housing: z
    .strictObject({
      case: text.optional(),
      mat: text.optional(),
      preserver: text.optional(),
      glass: text.optional(),
      seal: text.optional(),
    })
    .optional(),
  /** Hallmarks and inscriptions: transcription and where it stands. */
  marks: z.array(z.strictObject({ transcription: text, position: text.optional() })).default([]),
  /** What was coloured by hand, or false. */
  handColouring: z.union([text, z.boolean()]).default(false),
  /** Text alternatives of both readings. Both are needed before a plate is published. */
  description: z.strictObject({ positive: text, negative: text }),
  /** Name and date of whoever described it. */
  describedBy: z.strictObject({ name: text, date: edtf.optional() }).optional(),
  /** Rights of the pictures: a registry URI. */
  rights: rightsUri,
  /** Credit line. */
  credit: text.optional(),
  /** A word of care; the picture stays covered until the reader asks for it. */
  advisory: text.optional(),
  /** Labels by which a community says how the plate may be seen and used: its words, its page. */
  communityLabels: z
    .array(z.strictObject({ name: text, text, page: webAddress.optional() }))
    .default([]),
  /** Words of another time, kept as they were written and marked as such. */
  wording: z
    .array(
      z.strictObject({
        original: text,
        source: text,
        date: edtf.optional(),
        note: text.optional(),
      }),
    )
    .default([]),
  /** Captures that are kept but not published. */
  withheld: z.array(id).default([]),
  /** Condition as observed: a controlled term, a note, and where. */
  condition: z
    .array(
      z.strictObject({
        term: z.enum(conditionTerms),
        note: text.optional(),
        region: region.optional(),
      }),
    )
    .default([]),
  /** Marked regions that have permanent links. */
  spots: z
    .array(z.strictObject({ id, region, title: text, note: text.optional(), view: id.optional() }))
    .default([]),
  /** Guided looks: a paragraph and a view state each. */
  looks: z
    .array(
      z.strictObject({
        id,
        title: text,
        steps: z
          .array(
            z.strictObject({
              text,
              view: z.enum(['look', 'slide', 'beside', 'tilt', 'lamp', 'range']).default('look'),
              of: z.array(id).default([]),
              region: region.optional(),
              spot: id.optional(),
            }),
          )
          .min(1),
      }),
    )
    .default([]),
});

export type PlateRecord = z.output<typeof plateSchema>;
