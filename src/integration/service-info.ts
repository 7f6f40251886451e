/**
 * `info.json` names its own address (IIIF Image API 3.0, 5.2), which the store does not know:
 * the same tiles may be published in two places. So the address is filled in here.
 */

export interface Address {
  /** Path of the exhibit on its host, with both slashes. */
  readonly base: string;
  /** The exhibit's own address, with its path, where `collection.md` gives one. */
  readonly address: URL | undefined;
}

/** Where a view's image service lives; only a path when the exhibit's address is not known. */
export function serviceId(slug: string, view: string, { base, address }: Address): string {
  const within = `plates/${slug}/views/${view}`;
  if (!address) return `${base}${within}`;
  const root = address.href.endsWith('/') ? address.href : `${address.href}/`;
  return `${root}${within}`;
}

/** The info.json of the store, with the address of this place of publication. */
export function placedInfo(info: string, id: string): string {
  return `${JSON.stringify({ ...(JSON.parse(info) as object), id })}\n`;
}
