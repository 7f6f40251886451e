/** The sentences of Spots. */
import type { ShapeKind } from './shape-drawing.ts';

const begin: Readonly<Record<ShapeKind, string>> = {
  rectangle: 'Press two opposite corners on the picture.',
  outline: 'Press the corners of the outline one after the other, then “Close the outline”.',
};

export const spotsWords = {
  begin: (what: ShapeKind) => begin[what],
  drawn: (what: ShapeKind) => `The ${what} is drawn. Give it a title and keep it.`,
  three: 'An outline needs three corners or more.',
  unfinished: 'The shape is not finished: press the rest of it, or choose it off.',
  title: 'Give the spot a title first.',
  kept: 'Kept in this browser only.',
  notKept: 'This browser does not keep anything here.',
  taken: (fresh: number, all: number) => `${fresh} of ${all} spots were new and are kept.`,
  address: 'Address',
  addressOf: (title: string) => `Address of the spot ${title}`,
  remove: (title: string) => `Remove “${title}”`,
  notJson: 'This file is not JSON, so no spots could be read from it.',
  tooLarge: 'This file is larger than any list of spots, so it was not read.',
  nothing: 'This file holds no annotation with a rectangle or an outline on a view of this plate.',
} as const;
