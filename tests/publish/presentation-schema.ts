/**
 * The JSON schema of IIIF Presentation 3, from the validator of the IIIF consortium, where it lies
 * beside the project.
 */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { hasShared, sharedPath } from '../shared.ts';

const path = ['data', 'iiif', 'presentation-validator', 'schema', 'iiif_3_0.json'] as const;

/** What is wrong with a document, a line each; null where the schema is not here. */
export const presentationErrors = hasShared(...path) ? checker() : null;

function checker(): (document: object) => string[] {
  const ajv = new Ajv({ strict: false, allErrors: true });
  // The package's types describe another kind of import than the one that Node gives.
  (addFormats as unknown as (instance: Ajv) => void)(ajv);
  const validate = ajv.compile(JSON.parse(readFileSync(sharedPath(...path), 'utf8')) as object);
  return (document) => {
    validate(document);
    return (validate.errors ?? []).map((e) => `${e.instancePath} ${e.message ?? ''}`);
  };
}
