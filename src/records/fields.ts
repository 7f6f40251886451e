/** Small schemas that several records share. Each message completes "expected ...". */
import { z } from 'zod';
import { parseEdtf } from './edtf.ts';
import { rightsLabel } from './vocabulary.ts';

/** Text that says something: not empty, not only blanks. */
export const text = z.string('text').trim().min(1, 'some text');

/** A name that can stand in an address: `fishing-boats`, `fq-1911-14`. */
const slugPhrase = 'a name of lower-case letters, digits and single hyphens, such as "raking-left"';
export const slug = z
  .string(slugPhrase)
  .max(100, slugPhrase)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, slugPhrase);

/** The name of a capture, set-up or spot within its plate: as {@link slug}. */
export const id = slug;

/** A date as EDTF; a bare year that YAML reads as a number is taken as that year. */
const edtfPhrase = 'a date as EDTF, such as "1852", "1852~" (about), "185X" or "1849/1855"';
export const edtf = z
  .union([z.string(), z.number().int()], edtfPhrase)
  .transform(String)
  .refine((value) => parseEdtf(value) !== null, edtfPhrase);

/** One of the two registries of rights statements, so that other programs can read it. */
const rightsPhrase =
  'a RightsStatements.org or Creative Commons URI, such as "http://rightsstatements.org/vocab/NKC/1.0/"';
export const rightsUri = z
  .string(rightsPhrase)
  .refine((uri) => rightsLabel(uri) !== null, rightsPhrase);

/** The address of a page; nothing that a browser would run. */
export const webAddress = z.url({
  protocol: /^https?$/,
  error: 'a web address, such as "https://example.org/plates/"',
});

export const millimetres = amount('a length in millimetres above 0');

/** A number above 0; the phrase says of what. */
export function amount(phrase: string) {
  return z.number(phrase).positive(phrase);
}

/** A number from one limit to the other, both included. */
export function between(least: number, most: number, phrase: string) {
  return z.number(phrase).min(least, phrase).max(most, phrase);
}

/** A file inside the plate's `captures/` folder: no climbing out, no absolute path. */
const filePhrase = 'the name of a file inside captures/, such as "normal.tif"';
export const captureFile = z
  .string(filePhrase)
  .min(1, filePhrase)
  .refine(
    // Backslashes would be folders on one machine and letters on another.
    (name) => !/^\/|^[A-Za-z]:|(^|\/)\.{1,2}(\/|$)|\/\/|\/$|[\\\0]/.test(name),
    filePhrase,
  );

/** `x,y,width,height` in base pixels, as in W3C Media Fragments. */
const regionPhrase =
  'a region "x,y,width,height" in whole pixels of the base, such as "812,440,300,220"';
export const region = z
  .string(regionPhrase)
  .regex(/^\d{1,6},\d{1,6},[1-9]\d{0,5},[1-9]\d{0,5}$/, regionPhrase)
  .transform((value) => {
    const [x, y, width, height] = value.split(',').map(Number);
    return { x, y, width, height };
  });
export type Region = z.output<typeof region>;
