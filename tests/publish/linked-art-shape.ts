/**
 * The published shape of a Linked Art object, as far as our objects go: the tables of
 * https://linked.art/api/1.0/ (endpoint/physical_object, shared/statement, reference, type, name,
 * identifier, timespan, dimension, digital; endpoint/digital_object for services), read on
 * 26 November 2026, and what the JSON schema beside them requires. Nothing else is let through.
 */
import { z } from 'zod';

const uri = z.url();
const label = z.string().min(1);
const moment = z.iso.datetime();

const reference = (...types: [string, ...string[]]) =>
  z.strictObject({
    id: uri,
    type: z.enum(types),
    _label: label.optional(),
    notation: z.array(z.string()).optional(),
  });

const kind = z.strictObject({
  id: uri,
  type: z.literal('Type'),
  _label: label.optional(),
  get classified_as() {
    return z.array(kind).optional();
  },
});
const kinds = z.array(kind).min(1);

const name = z.strictObject({
  type: z.literal('Name'),
  classified_as: kinds.optional(),
  content: label,
  language: z.array(reference('Language')).optional(),
});
const identifier = z.strictObject({
  type: z.literal('Identifier'),
  classified_as: kinds,
  content: label,
});
const statement = z.strictObject({
  type: z.literal('LinguisticObject'),
  classified_as: kinds,
  content: label,
  language: z.array(reference('Language')).optional(),
});

const timespan = z.strictObject({
  type: z.literal('TimeSpan'),
  identified_by: z.array(name),
  begin_of_the_begin: moment.optional(),
  end_of_the_end: moment.optional(),
});
const dimension = z.strictObject({
  type: z.literal('Dimension'),
  classified_as: kinds,
  value: z.number(),
  unit: reference('MeasurementUnit'),
});

const service = z.strictObject({
  type: z.literal('DigitalService'),
  access_point: z.array(reference('DigitalObject')).min(1),
  conforms_to: z.array(reference('InformationObject')),
});
const digital = z.strictObject({
  type: z.literal('DigitalObject'),
  _label: label.optional(),
  classified_as: kinds.optional(),
  referred_to_by: z.array(statement).optional(),
  access_point: z.array(reference('DigitalObject')).min(1),
  digitally_available_via: z.array(service).optional(),
  format: z.string().optional(),
  conforms_to: z.array(reference('InformationObject')).optional(),
});

const production = z.strictObject({
  type: z.literal('Production'),
  timespan: timespan.optional(),
  took_place_at: z.array(reference('Place')).min(1).optional(),
  carried_out_by: z.array(reference('Person', 'Group')).min(1).optional(),
  technique: kinds,
  referred_to_by: z.array(statement).optional(),
});

export const linkedArtShape = z.strictObject({
  '@context': z.literal('https://linked.art/ns/v1/linked-art.json'),
  id: uri,
  type: z.literal('HumanMadeObject'),
  _label: label,
  classified_as: kinds,
  identified_by: z.array(z.union([name, identifier])).min(1),
  referred_to_by: z.array(statement),
  dimension: z.array(dimension).optional(),
  produced_by: production,
  current_owner: z.array(reference('Person', 'Group')),
  representation: z
    .array(
      z.strictObject({
        type: z.literal('VisualItem'),
        digitally_shown_by: z.array(digital).min(1),
      }),
    )
    .optional(),
  subject_of: z.array(
    z.strictObject({
      type: z.literal('LinguisticObject'),
      digitally_carried_by: z.array(digital).min(1),
    }),
  ),
});
