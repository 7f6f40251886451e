/** Which text of the content folder a Markdown file is; the plugins see only its path. */

export interface TextFile {
  /** Slug of the plate that it is the text of; empty for other pages. */
  readonly plate: string;
  /** Address of its page under the site's base path, `plates/harbour/`. */
  readonly address: string;
}

/** From a path with slashes, relative or absolute: `.../plates/harbour/plate.md`. */
export function textFile(path: string): TextFile {
  const parts = path.replaceAll('\\', '/').split('/');
  const [folder = '', owner = '', name = ''] = ['', '', ...parts].slice(-3);
  if (name === 'plate.md' && folder === 'plates') {
    return { plate: owner, address: `plates/${owner}/` };
  }
  const id = name.replace(/\.md$/, '');
  if (owner === 'techniques' || owner === 'lessons')
    return { plate: '', address: `${owner}/${id}/` };
  return { plate: '', address: id === 'collection' ? '' : `${id}/` };
}
