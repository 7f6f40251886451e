/**
 * The closed lists of words that records may use. A word is here because a reader,
 * a filter or a check depends on it; everything else is free text.
 */

export const setupKinds = [
  'normal',
  'raking',
  'axial',
  'transmitted',
  'ultraviolet',
  'infrared',
  'scan',
  'other',
] as const;
export type SetupKind = (typeof setupKinds)[number];

export const readings = ['positive', 'negative', 'mixed', 'none'] as const;
export type Reading = (typeof readings)[number];

export const orientations = ['laterally-reversed', 'right-reading'] as const;
export type Orientation = (typeof orientations)[number];

/** Getty AAT ids: seen in public cataloguing maps (two or more); no id where none was found. */
export const processes = {
  daguerreotype: 'http://vocab.getty.edu/aat/300127181',
  ambrotype: 'http://vocab.getty.edu/aat/300127186',
  tintype: 'http://vocab.getty.edu/aat/300134759',
  'glass plate': null,
  other: null,
} as const;
export type Process = keyof typeof processes;

/**
 * Condition terms seen in conservation and trade texts. Blue highlights and polishing
 * lines are effects of the process, not damage, and are left out on purpose.
 */
export const conditionTerms = [
  'tarnish',
  'haze',
  'corrosion spots',
  'abrasion',
  'scratch',
  'wipe marks',
  'mat scrape',
  'mat halo',
  'cleaning residue',
  'brown dots',
  'exfoliation',
  'dent',
  'dust',
  'fingerprint',
  'glass haze',
  'glass crizzling',
  'glass weeping',
  'glass broken',
  'seal broken',
  'seal replaced',
  'glass replaced',
  'preserver missing',
  'other',
] as const;
export type ConditionTerm = (typeof conditionTerms)[number];

/** RightsStatements.org, all twelve statements (data-model repository). */
export const rightsStatements: Readonly<Record<string, string>> = {
  InC: 'In Copyright',
  'InC-OW-EU': 'In Copyright - EU Orphan Work',
  'InC-EDU': 'In Copyright - Educational Use Permitted',
  'InC-NC': 'In Copyright - Non-Commercial Use Permitted',
  'InC-RUU': 'In Copyright - Rights-holder(s) Unlocatable or Unidentifiable',
  'NoC-CR': 'No Copyright - Contractual Restrictions',
  'NoC-NC': 'No Copyright - Non-Commercial Use Only',
  'NoC-OKLR': 'No Copyright - Other Known Legal Restrictions',
  'NoC-US': 'No Copyright - United States',
  CNE: 'Copyright Not Evaluated',
  UND: 'Copyright Undetermined',
  NKC: 'No Known Copyright',
};

/** Creative Commons: the URI forms are from memory, `by/4.0/` seen. */
export const creativeCommons: Readonly<Record<string, string>> = {
  'licenses/by/4.0': 'CC BY 4.0',
  'licenses/by-sa/4.0': 'CC BY-SA 4.0',
  'licenses/by-nc/4.0': 'CC BY-NC 4.0',
  'licenses/by-nd/4.0': 'CC BY-ND 4.0',
  'licenses/by-nc-sa/4.0': 'CC BY-NC-SA 4.0',
  'licenses/by-nc-nd/4.0': 'CC BY-NC-ND 4.0',
  'publicdomain/zero/1.0': 'CC0 1.0',
  'publicdomain/mark/1.0': 'Public Domain Mark 1.0',
};

/** The label of a rights URI, or null when it is neither of the two registries' own. */
export function rightsLabel(uri: string): string | null {
  const statement = /^https?:\/\/rightsstatements\.org\/vocab\/([A-Za-z-]+)\/1\.0\/$/.exec(uri);
  if (statement) return rightsStatements[statement[1]] ?? null;
  const licence =
    /^https?:\/\/creativecommons\.org\/((?:licenses|publicdomain)\/[a-z-]+\/\d\.\d)\/$/.exec(uri);
  return licence ? (creativeCommons[licence[1]] ?? null) : null;
}

/** Whether a rights URI says that there is no copyright, or that it was given up. */
export function isPublicDomain(uri: string): boolean {
  return /creativecommons\.org\/publicdomain\/|rightsstatements\.org\/vocab\/(NoC-|NKC)/.test(uri);
}
