/**
 * The content folder as the running build or server has read it, for the list of texts
 * (`src/content.config.ts`), which Astro evaluates beside our own modules.
 */
import type { ContentResult } from '../pipeline/content.ts';

const handle = Symbol.for('mirrorleaf.content');
type Holder = typeof globalThis & { [handle]?: ContentResult };

export function handContent(content: ContentResult): void {
  (globalThis as Holder)[handle] = content;
}

/** @throws Error where neither a build nor a server is running. */
export function handedContent(): ContentResult {
  const content = (globalThis as Holder)[handle];
  if (!content)
    throw new Error('The content folder has not been read: build with `npm run build`.');
  return content;
}
