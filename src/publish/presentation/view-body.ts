/** A view as a painting body: a whole picture that exists on the disk, and its image service. */
import type { PlateResult, ViewResult } from '../../records/result.ts';
import { languageMap } from './language-map.ts';

export type Json = Readonly<Record<string, unknown>>;

/** What the views of a plate are called in one language. */
export interface ViewWords {
  readonly language: string;
  readonly label: (view: ViewResult) => string;
}

/** Address of a view's image service, without a slash at the end. */
export function serviceAddress(plate: string, view: ViewResult): string {
  return `${plate}views/${view.id}`;
}

/** The whole picture closest to the wanted width from above, else the largest. */
export function wholePicture(view: ViewResult, width: number) {
  return view.sizes.find((size) => size.width >= width) ?? view.sizes[view.sizes.length - 1];
}

function picture(plate: string, view: ViewResult, width: number): Json {
  const size = wholePicture(view, width);
  return {
    id: `${serviceAddress(plate, view)}/full/${size.width},${size.height}/0/default.jpg`,
    type: 'Image',
    format: 'image/jpeg',
    width: size.width,
    height: size.height,
    service: [{ id: serviceAddress(plate, view), type: 'ImageService3', profile: 'level0' }],
  };
}

/** Width of a thumbnail, pixels: enough for a list on a screen of double density. */
const thumbnailWidth = 300;

export function thumbnail(plate: string, view: ViewResult): Json {
  return picture(plate, view, thumbnailWidth);
}

/** A large whole picture with its service, labelled; `Choice` asks each option for a label. */
export function viewBody(
  plate: string,
  view: ViewResult,
  words: readonly ViewWords[],
  thumbnails = true,
): Json {
  return {
    ...picture(plate, view, Number.POSITIVE_INFINITY),
    label: languageMap(words, ({ label }) => label(view)),
    ...(thumbnails ? { thumbnail: [thumbnail(plate, view)] } : {}),
  };
}

/** Views in the base frame, the positive of the pair first: simple clients take the first. */
export function registeredViews({ views, pair }: PlateResult): ViewResult[] {
  const rank = (view: ViewResult) =>
    view.id === pair?.positive ? 0 : view.id === pair?.negative ? 1 : 2;
  return views.filter((view) => view.registered).sort((a, b) => rank(a) - rank(b));
}
