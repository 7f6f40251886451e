/**
 * What static hosts are told in files of their own: who may read the pictures, what never
 * changes, where former addresses lead. Two forms that hosts read: `_headers` with `_redirects`,
 * and `.htaccess`. A host that reads neither serves the exhibit all the same.
 *
 * The pages carry their content security policy themselves. A header adds to it and never takes
 * away, so none is set here that a page in a frame of another site, or the search, would need.
 */

export interface HostSettings {
  /** Path of the exhibit on its host, with both slashes. */
  readonly base: string;
  /** Former slug and slug of today. */
  readonly moved: readonly (readonly [from: string, to: string])[];
}

/** For every answer. */
const everywhere: readonly (readonly [string, string])[] = [
  ['X-Content-Type-Options', 'nosniff'],
  ['Referrer-Policy', 'strict-origin-when-cross-origin'],
  ['Permissions-Policy', 'camera=(), microphone=(), geolocation=(), payment=()'],
];

/** IIIF asks that other sites' programs may read manifests and pictures. */
const open = ['Access-Control-Allow-Origin', '*'] as const;
/** Names of assets hold a digest of their bytes. */
const lasting = ['Cache-Control', 'public, max-age=31536000, immutable'] as const;

export function headersFile({ base }: HostSettings): string {
  const block = (path: string, headers: readonly (readonly [string, string])[]) =>
    [`${base}${path}`, ...headers.map(([name, value]) => `  ${name}: ${value}`)].join('\n');
  return `${[
    block('*', everywhere),
    block('plates/*', [open]),
    block('collection.json', [open]),
    block('plates.json', [open]),
    block('assets/*', [lasting]),
  ].join('\n\n')}\n`;
}

export function redirectsFile({ base, moved }: HostSettings): string {
  return moved
    .map(([from, to]) => `${base}plates/${from}/* ${base}plates/${to}/:splat 301\n`)
    .join('');
}

export function htaccessFile({ base, moved }: HostSettings): string {
  const set = ([name, value]: readonly [string, string]) => `Header set ${name} "${value}"`;
  return `${[
    'Options -Indexes',
    'DirectoryIndex index.html',
    `ErrorDocument 404 ${base}404.html`,
    'AddType application/ld+json .jsonld',
    ...moved.map(
      ([from, to]) => `RedirectMatch 301 "^${base}plates/${from}/(.*)$" "${base}plates/${to}/$1"`,
    ),
    '<IfModule mod_headers.c>',
    ...everywhere.map((pair) => `  ${set(pair)}`),
    '  <FilesMatch "\\.(?:json|jsonld|jpg|webp|png)$">',
    `    ${set(open)}`,
    '  </FilesMatch>',
    '</IfModule>',
  ].join('\n')}\n`;
}
