/**
 * The order in which Astro makes pages: first those that something waits for. Astro's own order is
 * that of their routes, in which the lists of all plates come before the plates.
 */
import type { AstroPrerenderer } from 'astro';

/** @param folders Within the exhibit, `plates/basin`. */
export function madeFirst(
  folders: ReadonlySet<string>,
): (standard: AstroPrerenderer) => AstroPrerenderer {
  return (standard) => ({
    ...standard,
    getStaticPaths: async () => {
      const paths = await standard.getStaticPaths();
      const { first = [], then = [] } = Object.groupBy(paths, ({ pathname }) =>
        folders.has(pathname.replace(/^\/|\/$/g, '')) ? 'first' : 'then',
      );
      return [...first, ...then];
    },
  });
}
