/**
 * The eight plates of the demonstration collection. All invented. Lengths are millimetres from
 * the plate's centre, x right, y down, as the camera sees it.
 */
import { numbersFrom } from '../../imaging/render/seeded.ts';
import { type FilmSpot, type Opening } from '../../imaging/render/plate.ts';
import { abrasion, fingerprint, scratch, wipe } from './marks.ts';
import { type DemonstrationObject } from './object.ts';

const quarter = { width: 108, height: 82.6 };
const sixthUpright = { width: 69.9, height: 82.6 };
const sixthAcross = { width: 82.6, height: 69.9 };

/** Elements along a sixth plate's picture: it is photographed with fewer pixels than a quarter plate. */
const sixthSide = 1000;

function opening(shape: Opening['shape'], width: number, height: number, x = 0, y = 0): Opening {
  return { shape, width, height, x, y };
}

/** Brown dots strewn over a rectangle (left, top, width, height). */
function brownDots(
  area: readonly [number, number, number, number],
  count: number,
  seed: number,
): FilmSpot[] {
  const next = numbersFrom(seed);
  return Array.from({ length: count }, () => ({
    x: area[0] + next() * area[2],
    y: area[1] + next() * area[3],
    radius: 0.12 + 0.35 * next() ** 3,
    rim: 25 + 30 * next(),
    centre: 45 + 50 * next(),
  }));
}

export const demonstrationObjects: readonly DemonstrationObject[] = [
  {
    slug: 'shells-and-drapery',
    seed: 1101,
    scene: 'still-life',
    sceneSide: sixthSide,
    ...sixthAcross,
    laterallyReversed: true,
    margin: 8,
    density: 0.74,
    polish: 0.1,
    undulation: 0.12,
    tarnish: { openings: [opening('oval', 70, 57)], rim: 44, reach: 3.6, haze: 2, edge: 14 },
    wear: { scratches: 34, specks: 260, fibres: 2 },
    marks: [
      { strokes: wipe([14, 2], 22, [-62, -20], 5, 71) },
      { strokes: wipe([14, 2], 17.5, [-55, -25], 3, 72) },
    ],
    filmSpots: brownDots([-38, -32, 76, 64], 14, 73),
  },
  {
    slug: 'chart-desk',
    seed: 1102,
    scene: 'instrument-desk',
    // The mosaic shows more than the base does.
    sceneSide: 1300,
    ...quarter,
    laterallyReversed: true,
    margin: 5,
    density: 0.72,
    polish: 0.08,
    undulation: 0.1,
    tarnish: { openings: [opening('oval', 92, 68)], rim: 36, reach: 3.4, haze: 2, edge: 20 },
    wear: { scratches: 26, specks: 240, fibres: 1 },
    marks: [{ strokes: scratch([-3.6, 18.2], [4.2, 22.6], 0.03) }],
    filmSpots: brownDots([-50, -39, 100, 26], 38, 74),
    colouring: [
      { part: 'book', colour: [0.52, 0.085, 0.06], strength: 0.78 },
      { part: 'brass', colour: [0.74, 0.5, 0.13], strength: 0.62 },
    ],
  },
  {
    slug: 'inner-basin',
    seed: 1103,
    scene: 'harbour',
    width: 139.7,
    height: 108,
    laterallyReversed: true,
    margin: 5,
    density: 0.8,
    polish: 0.07,
    undulation: 0.1,
    tarnish: { openings: [opening('rectangle', 124, 93)], rim: 52, reach: 2.2, haze: 1, edge: 8 },
    wear: { scratches: 30, specks: 360, fibres: 7 },
    filmSpots: [
      { x: -62, y: 47, radius: 6, rim: 24, centre: 40 },
      { x: -55, y: 50, radius: 4, rim: 18, centre: 30 },
    ],
    // The bracket's middle frame keeps the quay; the sky is in the shorter ones.
    exposures: { normal: 0.7, bracket: 1.12 },
  },
  {
    slug: 'room-with-a-window',
    seed: 1104,
    scene: 'window-room',
    sceneSide: sixthSide,
    ...sixthUpright,
    laterallyReversed: true,
    margin: 5,
    density: 0.72,
    polish: 0.1,
    undulation: 0.18,
    tarnish: { openings: [opening('octagon', 60, 73)], rim: 96, reach: 7, haze: 6, edge: 40 },
    wear: { scratches: 60, specks: 520, fibres: 4 },
    marks: [{ strokes: fingerprint([-3, 38.4], 75) }],
    filmSpots: [
      ...brownDots([-32, -38, 64, 76], 40, 76),
      { x: 22.5, y: 31.6, radius: 2.1, rim: 120, centre: -30 },
      { x: 26.4, y: 34.4, radius: 1.3, rim: 140, centre: -40 },
      { x: 19.4, y: 35.2, radius: 0.9, rim: 110, centre: -20 },
      { x: 27.4, y: 28.6, radius: 0.7, rim: 90, centre: 0 },
    ],
  },
  {
    slug: 'ropewalk-street',
    exposures: { 'normal-2016': 0.7, 'normal-2023': 0.7 },
    seed: 1105,
    scene: 'street',
    ...quarter,
    laterallyReversed: true,
    margin: 5,
    density: 0.74,
    polish: 0.08,
    undulation: 0.1,
    tarnish: { openings: [opening('rectangle', 90, 65)], rim: 34, reach: 2.6, haze: 1, edge: 16 },
    wear: { scratches: 40, specks: 300, fibres: 3 },
    marks: [
      { strokes: abrasion([-44, -40, 31, 5.4], 130, 4, 77) },
      { strokes: scratch([4.2, -11.6], [19.6, -2.2], 0.034, 0.03), since: '2019-01-01' },
    ],
  },
  {
    slug: 'memorial-cast',
    seed: 1106,
    scene: 'plaster-head',
    sceneSide: sixthSide,
    ...sixthUpright,
    laterallyReversed: true,
    margin: 5,
    density: 0.73,
    polish: 0.14,
    undulation: 0.16,
    tarnish: { openings: [opening('arch', 55, 66, 0, -1)], rim: 32, reach: 2.8, haze: 2, edge: 12 },
    wear: { scratches: 95, specks: 260, fibres: 3 },
    marks: [{ strokes: abrasion([-25, 31.3, 50, 1.8], 170, 0, 78) }],
    dents: [{ x: 28.05, y: 1.45, radius: 1.4, depth: 0.27 }],
  },
  {
    slug: 'quay-in-two-views',
    exposures: { normal: 0.68 },
    seed: 1107,
    scene: 'stereo-quay',
    stereo: true,
    width: 108,
    height: 81,
    laterallyReversed: true,
    margin: 5,
    density: 0.72,
    polish: 0.025,
    undulation: 0.1,
    tarnish: {
      openings: [opening('arch', 47, 64, -26, 0), opening('arch', 47, 64, 26, 0)],
      rim: 26,
      reach: 2.4,
      haze: 2,
      edge: 10,
    },
    wear: { scratches: 22, specks: 260, fibres: 2 },
    filmSpots: [
      { x: -20, y: 40, radius: 14, rim: 10, centre: 34 },
      { x: 18, y: 41, radius: 18, rim: 12, centre: 38 },
      { x: 44, y: 40, radius: 8, rim: 8, centre: 30 },
    ],
  },
  {
    slug: 'shipwrights-bench',
    seed: 1108,
    scene: 'tool-bench',
    sceneSide: sixthSide,
    support: 'glass',
    ...sixthAcross,
    laterallyReversed: false,
    margin: 5,
    density: 0.84,
    polish: 0,
    undulation: 0.05,
    tarnish: { openings: [], rim: 0, reach: 1, haze: 0, edge: 0 },
    wear: { scratches: 6, specks: 320, fibres: 4 },
    marks: [{ strokes: scratch([-33.5, 20.8], [-29, 23.8], 0.05) }],
  },
];
