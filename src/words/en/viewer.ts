/**
 * What the viewer says in the reader's browser, in English. Only the page's own language is
 * loaded, so this file imports nothing but parts of itself. Numbers come already written.
 */
import { tools } from './tools.ts';

const sides = [
  'above',
  'the upper right',
  'the right',
  'the lower right',
  'below',
  'the lower left',
  'the left',
  'the upper left',
];

export const viewer = {
  ...tools,
  faults: {
    pictures: 'The pictures could not be opened.',
    picture: 'The picture could not be read.',
    part: 'A part of the picture could not be fetched.',
    offline: 'The picture could not be fetched: no connection.',
    answer: (status: number, address: string) =>
      `The picture could not be fetched: ${status} at ${address}.`,
    notPicture: (address: string) => `What came from ${address} does not describe a picture.`,
    dataOffline: 'The data of this view could not be fetched: no connection.',
    dataAnswer: (status: number, address: string) =>
      `The data of this view could not be fetched: ${status} at ${address}.`,
    notData: (address: string) => `What came from ${address} does not describe data planes.`,
    noPixels: 'This browser does not let pixels be read.',
    noDrawing: 'This browser does not let pictures be drawn.',
    noScreen: 'This browser does not allow the whole screen here.',
    otherPlate: 'What is known of the other plate could not be fetched.',
    noPlate: (slug: string) => `There is no plate “${slug}” to be shown beside this one.`,
  },

  surface: {
    /** For a screen reader. @param n Which of the pictures beside each other, from 0. */
    name: (title: string, n: number) =>
      `${title}: ${['', 'second ', 'third '][n]}picture. Arrow keys move it, plus and minus change its size, 0 shows all of it.`,
    plainTilt:
      'This browser draws without shaders here: Tilt is shown as a plain cross-fade, which is not what light does.',
    plainMode:
      'This browser draws without shaders here, which this way of looking needs; the picture is shown as it is.',
  },

  /** Tilt by steps that were mixed beforehand; `degrees` as written. */
  stills: {
    plain:
      'This browser cannot mix the two readings itself: Tilt goes by steps that were mixed beforehand, in linear light.',
    step: (held: string, n: number, count: number) => `${held} (step ${n} of ${count})`,
    title: 'Between the two readings',
    alternative: (title: string, degrees: string) => `${title}, tilted by ${degrees}`,
  },

  /** What is seen, in a few words below the picture. */
  caption: {
    tilt: (degrees: string) => `Positive and negative added in linear light, tilted by ${degrees}`,
    still: (degrees: string) => `Positive and negative added beforehand, tilted by ${degrees}`,
    fade: 'Positive and negative in a plain cross-fade',
    relief: 'Relief of the surface, drawn from its slopes',
    slope: 'Slope of the surface towards the lamp',
    gloss: 'Gloss of the surface',
    frame: (n: number, of: number) => `Frame ${n} of ${of}, as it was taken`,
    lamp: (place: string, photographs: number) =>
      `Under a lamp at ${place}, worked out from ${photographs} photographs`,
    rendered: 'Merged exposures, as rendered',
    merged: (stops: string) => `Merged exposures, light at ${stops}`,
    exposure: (seconds: string) => `Merged exposures, as one of ${seconds} would have it`,
  },

  picture: {
    waiting:
      'Waiting for parts of the picture: the connection is slow. What is here already can be moved and turned.',
    across: (percent: string) => `${percent} of the way across`,
    degrees: (degrees: string) => `${degrees} degrees`,
    turned:
      'Turned left for right: writing and buttons lie as they did before the camera. The plate itself looks the other way round.',
    unturned: 'As the plate looks: left and right as on the object.',
    noScale: 'scale not known: no lengths are shown',
    noFrame: 'this picture is not in the plate’s frame',
    sameScale:
      'Both plates are shown at the same physical scale: a millimetre is as long in the one as in the other.',
    notSameScale:
      'The scale of one of the two is not known, so they are not shown at the same physical scale.',
  },

  address: {
    noView: (id: string) => `This plate has no view “${id}” any more.`,
    noSpot: (id: string | null) => `This plate has no spot “${id}” any more.`,
    changed: 'The picture has changed since this address was made; the same place is shown.',
    tilt: 'Tilt needs a positive and a negative in register; this plate has no such pair.',
    apart: (name: string, why: string | null) =>
      `“${name}” cannot be laid under a divider: ${why ?? 'not aligned'}.`,
    lamp: 'Lamp needs a set of frames under many lamps; this plate has none.',
    range: 'Range needs a merged bracket of exposures; this plate has none.',
    difference: 'Difference needs two sittings in register; this plate has no such pair.',
  },

  tilt: {
    noPair: 'There is no pair in register.',
    beingRead: 'it is being read',
    small: 'The small pictures could not be read.',
    pressed: 'The place that you pressed',
    inSight: 'What is in sight',
    reading: {
      'reads positive': 'reads positive',
      turning: 'turning',
      'reads negative': 'reads negative',
    },
    now: (what: string, reading: string, turns: string) => `${what} ${reading} now; ${turns}.`,
    unread: (what: string, reason: string) => `${what} cannot be read: ${reason}.`,
    noTurn: (reason: string) => `it has no turning point: ${reason}`,
    notHere: 'it does not turn in this room',
    turnsAt: (degrees: string) => `it turns at ${degrees}`,
    unknown: (reason: string) => `The turning point is not known: ${reason}.`,
    none: (reason: string) => `This plate has no turning point: ${reason}.`,
    never: 'In this room the mirror never becomes bright enough: the plate does not turn.',
    at: (degrees: string) =>
      `Highlights and shadows are equally bright at ${degrees}: the turning point of this plate.`,
    reasons: {} as Readonly<Record<string, string>>,
  },

  device: {
    stopped: 'The plate no longer follows this device.',
    lessMotion:
      'This device asks for less motion, so its tilt is not used. Use the ruled line instead.',
    silent: 'This device does not tell how it is held.',
    denied: 'Permission was not given.',
    follows: 'The plate follows this device: tilt it towards you or away. Press again to stop.',
  },

  lamp: {
    none: 'This plate has no set of frames under many lamps.',
    /** Bearings are clockwise from the plate's top edge. */
    from: (bearing: number) => `from ${sides[Math.round(bearing / 45) % 8]}`,
    place: (bearing: string, height: string) => `bearing ${bearing}, ${height} above the plate`,
    height: (degrees: string) => `${degrees} degrees above the plate`,
    bearing: (degrees: string, from: string) => `${degrees} degrees, ${from}`,
    stands: (place: string, from: string) => `The lamp stands at ${place}, ${from}.`,
    frame: (n: number, place: string) => `Frame ${n} as it was taken: lamp at ${place}.`,
    frameKept: (n: number, place: string) =>
      `Lamp of frame ${n}, at ${place}; the frame itself is not published, so this is the fit at its place.`,
    relief: (times: string | null) =>
      `Relief: the surface alone, as if matte; slopes are drawn ${times === null ? 'more' : `${times} times`} as steep.`,
    slope: (ends: string | null) =>
      `Slope: white rises towards the lamp, black falls away, level is middle grey${ends === null ? '' : `; the ends are slopes of ${ends}`}.`,
    gloss:
      'Gloss: what the brightest lamps add to the matte part, brighter where a facet sends the lamp to the lens.',
    onlyFrames: (n: number, place: string) =>
      `Only the captured lamps are offered here: this is frame ${n}, at ${place}.`,
    nearest: (place: string) =>
      `No lamp was captured out there: the plate is shown under a lamp at ${place}, the nearest that the captured lamps enclose.`,
    fit: (lamps: number, apart: string, leftOut: string, nearest: string) =>
      `Fitted from ${lamps} lamps, ${apart} apart. A frame left out is foretold to ${leftOut}; its nearest neighbour in its place gives ${nearest}.`,
    notFree:
      'That gains too little over the frames themselves, so lamps between them are not offered.',
    clipped: (share: string) =>
      `${share} of the plate was clipped in at least one frame; there the glint was brighter than it is shown.`,
    surface: (share: string) =>
      `Relief, slope and gloss are a fit of a matte surface that leaves ${share} of its light unexplained.`,
  },

  range: {
    none: 'This plate has no merged bracket.',
    stops: (number: string) => `${number} stops`,
    asRendered: 'as rendered',
    white: (light: string) => `light ${light} is white`,
    oneExposure: (seconds: string) =>
      `As one exposure of ${seconds} would have it: what is brighter than its white is clipped.`,
    rendered:
      'As rendered for the screen: the wide range is pressed together, so brightness is not in proportion to light.',
    merged: (stops: string) =>
      `Merged light at ${stops}: on this screen brightness is in proportion to light, and what is above the white point is clipped.`,
    note: (frames: number, shortest: string, longest: string, span: string) =>
      `Merged from ${frames} exposures, ${shortest} to ${longest}; from the noise to the brightest light ${span}.`,
    waiting: 'Light of what is in sight, in stops. Nothing has come yet.',
    histogram: 'Light of what is in sight, in stops; heights are square roots.',
    above: (percent: string | null) => `${percent ?? 'Nothing'} lies above the white point.`,
  },

  looks: { step: (n: number, of: number) => `${n} of ${of}` },

  turning: {
    eye: 'eye',
    plate: 'plate',
    lamp: 'lamp',
    dark: 'dark wall',
    bright: { dark: 'dim room', window: 'bright window', bright: 'bright room' },
    looks: 'the mirror looks here',
    tilt: (degrees: string) => `Plate turned by ${degrees}, the mirror’s line by twice that.`,
    title: (degrees: string) =>
      `Section: an eye before a plate that is turned by ${degrees}, a lamp at the side, a dark wall behind the eye and a bright window above it.`,
    scattered: 'from the lamp, scattered by the silver',
    mirrored: 'from the room, by the mirror',
  },
};

export type ViewerWords = typeof viewer;
