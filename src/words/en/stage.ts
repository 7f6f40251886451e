/** The words that stand in the viewer's markup, in English: controls, panels, names of views. */
import type { CaptureResult } from '../../records/result.ts';
import type { Reading, SetupKind } from '../../records/vocabulary.ts';
import { modes } from './modes.ts';

export const stage = {
  /** A view is called by its reading, then its light: "Positive, side lamp". */
  readings: {
    positive: 'Positive',
    negative: 'Negative',
    mixed: 'Mixed reading',
    none: null,
  } satisfies Record<Reading, string | null>,
  lights: {
    normal: 'side lamp',
    raking: 'raking lamp',
    axial: 'axial light',
    transmitted: 'transmitted light',
    ultraviolet: 'ultraviolet',
    infrared: 'infrared',
    scan: 'scanner',
    other: null,
  } satisfies Record<SetupKind, string | null>,
  /** How a view was made from several photographs. */
  made: {
    merge: 'merged exposures',
    relight: 'lamp that can be moved',
    mosaic: 'joined close-ups',
    local: 'merged exposures, detail brought out',
    slope: 'slope of the surface',
    relief: 'relief of the surface',
    gloss: 'gloss of the surface',
    adds: 'what raking light adds',
    colouring: 'hand colouring',
  },
  /** One of the photographs of a set. */
  frame: {
    single: (n: number, of: number) => `photograph ${n} of ${of}`,
    bracket: (n: number, of: number) => `exposure ${n} of ${of}`,
    lights: (n: number, of: number) => `lamp ${n} of ${of}`,
    mosaic: (n: number, of: number) => `close-up ${n} of ${of}`,
  } satisfies Record<CaptureResult['kind'], (n: number, of: number) => string>,
  apart: 'it was not laid on the other pictures',
  alternative: (title: string, view: string) => `${title}: ${view}.`,

  register: {
    none: 'No two readings of this plate are in register; its pictures can be looked at beside each other.',
    one: 'There is one picture of this plate.',
    inFrame: 'Both readings lie in the plate’s frame.',
    within: (pixels: string, micrometres: string | null) =>
      `The two readings lie on each other to within ${pixels}${micrometres === null ? '' : ` (${micrometres})`}.`,
  },

  pixels: (size: string) => `(${size} pixels)`,
  ways: 'Ways of looking',
  sizeAndTools: 'Size and tools',
  modes,
  smaller: 'Smaller',
  larger: 'Larger',
  whole: 'Whole plate',
  tools: {
    move: 'Move',
    measure: 'Measure',
    spots: 'Spots',
    looks: 'Guided looks',
    take: 'Take away',
    cite: 'Cite',
  },
  correct: 'Left for right',
  screen: 'Full screen',
  divider: 'Divider',

  views: {
    view: 'View',
    first: 'First',
    second: 'Second',
    swap: 'Change sides',
    turned: 'Turned',
    keeps: 'Keeps its place on',
    onScreen: 'the screen',
    onPlate: 'the plate',
    notOffered: (names: readonly string[], why: string) =>
      names.length === 1
        ? `“${names[0]}” is not offered here: ${why}. It can be seen in Look and Beside.`
        : `${names.length} views are not offered here: ${why}. They can be seen in Look and Beside.`,
    secondPlate: 'Second plate',
    thisPlate: 'this plate',
    roughly: (names: readonly string[], why: string) =>
      names.length === 1
        ? `“${names[0]}” is not in register with the others (${why}), so places match only roughly.`
        : `${names.length} views are not in register with the others (${why}), so places match only roughly.`,
    difference:
      'Between the two: middle grey where nothing has changed, lighter where the second is lighter, darker where it is darker. A tenth of the tone scale is drawn as half of the grey.',
    differenceNote:
      'A change of lamp, exposure or register looks like a change of the plate. Edges drawn double are the pictures lying a little apart.',
  },

  tilt: {
    eye: 'eye',
    plate: 'plate',
    tilt: 'Tilt',
    dark: 'facing the dark',
    bright: 'facing the bright',
    less: 'Less',
    more: 'More',
    turning: 'To the turning point',
    here: 'Read what is in sight',
    room: 'Room',
    rooms: { dark: 'dark', window: 'one window', bright: 'bright' },
    drag: 'Dragging moves the picture',
    device: 'Follow this device',
    note: 'The picture under a lamp and the picture in the mirror are added in linear light, as the eye would see them, and brought to one brightness.',
  },

  lamp: {
    height: 'Height of the lamp',
    bearing: 'Bearing of the lamp',
    plate: 'plate',
    lens: 'lens',
    bearingField: 'Bearing',
    heightField: 'Height',
    drawn: 'What is drawn',
    as: {
      lit: 'As lit',
      relief: 'Relief',
      slope: 'Slope',
      gloss: 'Gloss',
      frame: 'Captured frame',
    },
    captured: 'Captured lamps',
    nearest: 'Nearest captured lamp',
    previous: 'Frame before',
    next: 'Frame after',
    note: 'Drag the lamp along the plate’s border and along the quarter circle, or use the two ruled lines.',
  },

  range: {
    exposure: 'Exposure',
    white: 'White point',
    drawn: 'What is drawn',
    rendering: 'As rendered',
    merged: 'Merged light',
    marks: 'Mark what no frame holds',
    frames: 'As one exposure would have it',
    note: 'The bracket holds more light than a screen shows. Choose which part of it is seen.',
  },

  move: { group: 'Move the picture', left: 'Left', right: 'Right', up: 'Up', down: 'Down' },

  measure: {
    group: 'Measure',
    kinds: {
      length: 'a length',
      angle: 'an angle',
      area: 'an area',
      profile: 'luminance along a line',
    },
    middle: 'Set a point in the middle of the picture',
    close: 'Close the outline',
    again: 'Begin again',
    save: 'Save the numbers as a table',
    noScale: (from: string) => `Scale: not known. ${from}`,
    scale: (value: string, uncertainty: string | null, from: string) =>
      `Scale: ${value} pixels per millimetre${uncertainty === null ? '' : ` ± ${uncertainty}`}; ${from}.`,
    actual: 'Actual size on this screen',
    card: (width: string) => `Make the line as wide as a bank card (${width})`,
    cardSet: 'It is as wide now',
    one: 'Actual size',
    ten: 'Ten times',
  },

  spots: {
    group: 'Spots',
    none: 'No spots are marked on this plate yet.',
    title: 'Title of a new spot',
    note: 'Note',
    shape: 'Shape of the new spot',
    rectangle: 'Draw a rectangle',
    outline: 'Draw an outline',
    middle: 'Set a point in the middle of the picture',
    close: 'Close the outline',
    mark: 'Keep the shape, or what is in sight',
    save: 'Save my spots as a file',
    open: 'Open a file of spots',
    own: 'Your own spots stay in this browser; nothing is sent. The file is W3C Web Annotation.',
  },

  looks: {
    group: 'Guided looks',
    look: 'Look',
    back: 'Back',
    next: 'Next',
    again: 'Show this step again',
    class: 'Large type for a class',
  },

  take: {
    group: 'Take away',
    png: 'Save what is in sight as PNG',
    tiff: 'Save it as TIFF',
    print: 'Print what is in sight as a figure',
    note: 'At full resolution, with scale bar, citation, credit and rights below the picture and written into the file. A TIFF is not compressed: three bytes for each pixel.',
  },

  cite: {
    group: 'Cite',
    citation: 'What is in sight, for a footnote',
    copy: 'Copy',
    embedding: 'To show it in a page of your own, paste this into the page',
    copyCode: 'Copy the code',
  },
};

export type StageWords = typeof stage;
