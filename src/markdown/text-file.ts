/** Which text of the content folder a Markdown file is; the plugins see only its path. */

import { overlayName } from '../records/overlay.ts';

export interface TextFile {
  /** Slug of the plate that it is the text of; empty for other pages. */
  readonly plate: string;
  /** Address of its page under the site's base path, `plates/harbour/`. */
  readonly address: string;
  /** Of a translation, such as `plate.fr.md`; null for an original. */
  readonly language: string | null;
}

/**
 * From a path with slashes, relative or absolute: `.../plates/harbour/plate.md`. The address is
 * that of the page in the first language.
 */
export function textFile(path: string): TextFile {
  const parts = path.replaceAll('\\', '/').split('/');
  const [folder = '', owner = '', file = ''] = ['', '', ...parts].slice(-3);
  const overlay = overlayName(file);
  const name = overlay?.original ?? file;
  const language = overlay?.language ?? null;
  if (name === 'plate.md' && folder === 'plates') {
    return { plate: owner, address: `plates/${owner}/`, language };
  }
  const id = name.replace(/\.md$/, '');
  if (owner === 'techniques' || owner === 'lessons')
    return { plate: '', address: `${owner}/${id}/`, language };
  return { plate: '', address: id === 'collection' ? '' : `${id}/`, language };
}
