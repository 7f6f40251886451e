/** Small schemas that several records share. Each message completes "expected ...". */
import { z } from 'zod';
import { parseEdtf } from './edtf.ts';
import { rightsLabel } from './vocabulary.ts';

/** Text that says something: not empty, not only blanks. */
export const text = z.string().trim().min(1, 'some text');

/** A name that can stand in an address: `fishing-boats`, `fq-1911-14`. */
export const slug = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower-case letters, digits and single hyphens');

/** The name of a capture, set-up or spot within its plate: as {@link slug}. */
export const id = slug;

/** A date as EDTF; a bare year that YAML reads as a number is taken as that year. */
export const edtf = z
  .union([z.string(), z.number().int()])
  .transform(String)
  .refine(
    (value) => parseEdtf(value) !== null,
    'a date as EDTF, such as "1852", "1852~" or "1849/1855"',
  );

/** One of the two registries of rights statements, so that other programs can read it. */
export const rightsUri = z
  .url()
  .refine(
    (uri) => rightsLabel(uri) !== null,
    'a RightsStatements.org or Creative Commons URI, such as "http://rightsstatements.org/vocab/NKC/1.0/"',
  );

export const millimetres = z.number().positive('a length in millimetres above 0');

/** A file inside the plate's `captures/` folder: no climbing out, no absolute path. */
export const captureFile = z
  .string()
  .min(1)
  .refine(
    (name) => !/^([/\\]|[A-Za-z]:)|(^|[/\\])\.\.([/\\]|$)/.test(name) && !name.includes('\0'),
    'a file name inside captures/',
  );

/** `x,y,width,height` in base pixels, as in W3C Media Fragments. */
export const region = z
  .string()
  .regex(/^\d+,\d+,[1-9]\d*,[1-9]\d*$/, 'a region "x,y,width,height" in base pixels')
  .transform((value) => {
    const [x, y, width, height] = value.split(',').map(Number);
    return { x, y, width, height };
  });
export type Region = z.output<typeof region>;
