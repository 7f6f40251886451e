/**
 * Addresses under the site's base path. Every link of the pages goes through here, so that the
 * exhibit works under any path of any host.
 */
import type { PlateResult, ViewResult } from '../records/result.ts';

/** With its slash at the end: `trailingSlash` is `always`. */
export const base = import.meta.env.BASE_URL;

/** Addresses of the pages in one language. */
export interface Addresses {
  /** The beginning, with its slash at the end. */
  readonly home: string;
  readonly platesIndex: string;
  readonly techniquesIndex: string;
  readonly lessonsIndex: string;
  readonly planner: string;
  readonly glossary: string;
  readonly about: string;
  readonly searchPage: string;
  readonly plateAddress: (slug: string) => string;
  readonly capturesAddress: (slug: string) => string;
  readonly techniqueAddress: (id: string) => string;
  readonly lessonAddress: (id: string) => string;
  readonly answerAddress: (id: string) => string;
}

/** @param root Of a language: the base path, or a folder of it, with its slash at the end. */
export function addressesUnder(root: string): Addresses {
  const lessonAddress = (id: string) => `${root}lessons/${id}/`;
  const plateAddress = (slug: string) => `${root}plates/${slug}/`;
  return {
    home: root,
    platesIndex: `${root}plates/`,
    techniquesIndex: `${root}techniques/`,
    lessonsIndex: `${root}lessons/`,
    planner: `${root}planner/`,
    glossary: `${root}glossary/`,
    about: `${root}about/`,
    searchPage: `${root}search/`,
    plateAddress,
    capturesAddress: (slug) => `${plateAddress(slug)}captures/`,
    techniqueAddress: (id) => `${root}techniques/${id}/`,
    lessonAddress,
    answerAddress: (id) => `${lessonAddress(id)}answer/`,
  };
}

/** Of the first language, which documents for other programs name. */
export const { plateAddress } = addressesUnder(base);

/** Both readings side by side, for previews elsewhere; a covered plate has none. */
export const previewAddress = (slug: string): string => `${base}plates/${slug}/preview.jpg`;

/** Folder of one view's image service. */
export const viewAddress = (slug: string, view: string): string =>
  `${base}plates/${slug}/views/${view}`;

/** A state of the viewer, as a fragment of the plate's page. */
export function stateFragment(state: {
  readonly view: string;
  readonly of: readonly string[];
  readonly region?: { x: number; y: number; width: number; height: number } | undefined;
}): string {
  const { view, of, region } = state;
  const parts = [`view=${view}`];
  if (of.length > 0) parts.push(`of=${of.join(',')}`);
  if (region) parts.push(`xywh=pixel:${region.x},${region.y},${region.width},${region.height}`);
  return `#${parts.join('&')}`;
}

/**
 * The address of a page for the world: under the collection's own address where it has one, else
 * nothing. The base path of a trial build has no place in it.
 */
export function worldAddress(site: string | undefined, path: string): string | undefined {
  if (site === undefined) return undefined;
  const within = path.startsWith(base) ? path.slice(base.length) : path.replace(/^\//, '');
  return new URL(within, site.endsWith('/') ? site : `${site}/`).href;
}

export interface Still {
  readonly src: string;
  readonly srcset: string;
  readonly width: number;
  readonly height: number;
}

/** The whole picture of a view, in the sizes that exist, up to `largest` pixels wide. */
export function still(result: PlateResult, view: ViewResult, largest = 1600): Still {
  const folder = viewAddress(result.slug, view.id);
  const fit = view.sizes.filter((size, index) => index === 0 || size.width <= largest);
  const address = (size: { width: number; height: number }) =>
    `${folder}/full/${size.width},${size.height}/0/default.jpg`;
  const src = fit.find((size) => size.width >= 480) ?? fit[fit.length - 1];
  return {
    src: address(src),
    srcset: fit.map((size) => `${address(size)} ${size.width}w`).join(', '),
    width: src.width,
    height: src.height,
  };
}
