/** What the viewer's tools say in the reader's browser, in English. */
import { plural } from '../locale.ts';
import { modes } from './modes.ts';

const many = plural('en');

export const tools = {
  measure: {
    begin: {
      length: 'Press the picture at both ends of what you want to measure.',
      angle: 'Press one end, the corner, and the other end.',
      area: 'Press the corners one after the other, then “Close the outline”.',
      profile: 'Press both ends of the line along which the luminance is wanted.',
    },
    inPixels: 'The scale of this picture is not known: lengths are given in pixels.',
    corners: (set: number) => {
      const are = many(set, { one: 'corner is', other: 'corners are' });
      return `${set} ${are} set. Press the next one${set > 2 ? ', or close the outline' : ''}.`;
    },
    corner: 'One end is set. Press the corner.',
    otherEnd: 'Press the other end.',
    secondEnd: 'One end is set. Press at the other end.',
    threeCorners: 'An area needs three corners or more.',
    noArea: 'The scale of this picture is not known, so neither is the area.',
    pixels: (number: string) => `${number} pixels; the scale is not known`,
    uncertain: (value: string) => `${value}; the uncertainty of the scale is not known`,
    standard: (value: string, uncertainty: string) =>
      `${value} ± ${uncertainty} (standard uncertainty)`,
    profile: (length: string, view: string, low: string, high: string, factor: number) =>
      `${length}. Luminance of “${view}” along it, linear: ${low} to ${high} of white${factor === 1 ? '' : `, read at 1/${factor} of the full size`}.`,
    /** Heads of the columns of the saved table. */
    along: (unit: string) => `along (${unit})`,
    luminance: 'luminance (linear 0 to 1)',
    inPixel: 'pixels',
    keptScreen: (number: string) =>
      `Kept in this browser: ${number} pixels a millimetre on this screen.`,
    noActual: 'The scale of this picture is not known, so its actual size is not either.',
    tellScreen: 'Tell the size of this screen first: make the line as wide as a bank card.',
    actual: 'Shown at its actual size on this screen.',
    times: (times: number) => `Shown ${times} times as large as it is, on this screen.`,
  },

  spots: {
    begin: {
      rectangle: 'Press two opposite corners on the picture.',
      outline: 'Press the corners of the outline one after the other, then “Close the outline”.',
    },
    drawn: {
      rectangle: 'The rectangle is drawn. Give it a title and keep it.',
      outline: 'The outline is drawn. Give it a title and keep it.',
    },
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
    nothing:
      'This file holds no annotation with a rectangle or an outline on a view of this plate.',
  },

  take: {
    making: 'Putting the picture together …',
    failed: 'The picture could not be made.',
    nothing: 'Nothing is in sight to be taken away.',
    rights: (rights: string) => `Rights: ${rights}`,
    firstOnly: 'Only the first picture was taken.',
    full: (width: number, height: number) =>
      `Made at full resolution, ${width} by ${height} pixels.`,
    smaller: (factor: number, width: number, height: number) =>
      `Made at 1/${factor} of the full resolution, ${width} by ${height} pixels: all of it would be too large for a browser.`,
  },

  cite: {
    copied: 'Copied.',
    marked: 'The words are marked; copy them with the keyboard or the menu.',
    and: ' and ',
    title: (title: string) => `“${title}”`,
    modes,
    view: (mode: string, names: string) => `view ${mode} (${names})`,
    region: (region: string) => `region ${region} in pixels of the plate’s frame`,
    turned: 'turned left for right',
    picture: (digests: string, date: string) => `Picture ${digests}, read ${date}.`,
  },
};

export type ToolWords = typeof tools;
