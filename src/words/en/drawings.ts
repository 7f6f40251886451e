/** The words in and beside the drawings of a set-up and the coarse maps, in English. */
import { plural } from '../locale.ts';

const many = plural('en');

export const drawings = {
  plan: 'From above, to scale',
  section: 'From the side, to scale',
  planTitle: (what: string) => `The set-up from above, to scale: ${what}.`,
  sectionTitle: (what: string) => `The set-up from the side, to scale: ${what}.`,
  plate: 'plate',
  topEdge: 'top edge',
  lens: 'lens',
  lensUnknown: 'lens: distance not recorded',
  lamp: 'lamp',
  lampAt: (distance: string | null) =>
    distance === null ? 'lamp: distance not recorded' : `lamp, ${distance}`,
  diffuser: 'diffuser',
  lampsWithoutPlace: (count: number) =>
    many(count, {
      one: 'lamp: place not recorded',
      other: `${count} lamps: place not recorded`,
    }),
  panel: (distance: string | null) =>
    distance === null ? 'panel: distance not recorded' : `panel, ${distance} along the light`,
  panelUnknown: 'panel: side not recorded',
  panelSize: 'panel: size not recorded',
  glass: (thickness: string | null) =>
    thickness === null ? 'glass: thickness not recorded' : `glass, ${thickness}`,
  glassHeight: 'its height is not recorded',
  glassFree: 'at any height over the plate',
  surround: {
    dark: 'dark: all that the mirror shows',
    bright: 'bright: all that the mirror shows',
    mixed: 'part dark, part bright',
  },
  surroundUnknown: 'surround not recorded',
  behind: 'light from behind',
  plateUnknown: 'plate: size not recorded',
  lamps: (count: number) => `${count} places of the lamp`,
  notToScale: 'What is dashed and grey is not recorded, and its place is not to scale.',

  /** What white paper and full ink stand for in a map. */
  maps: {
    evenness: 'no ink at 150 % of the median, full ink at 50 %',
    clipping: 'full ink from 25 % of a field',
    residual: (pixels: string) => `full ink from ${pixels}`,
    turning: 'no ink at half, full ink at twice the plate’s own',
  },
};

export type DrawingWords = typeof drawings;
