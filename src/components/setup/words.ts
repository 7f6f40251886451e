/** The words in and beside the drawings of a set-up. */
import { degrees, millimetres } from '../measures.ts';

export const setupWords = {
  plan: 'From above, to scale',
  section: 'From the side, to scale',
  planTitle: (what: string) => `The set-up from above, to scale: ${what}.`,
  sectionTitle: (what: string) => `The set-up from the side, to scale: ${what}.`,
  plate: 'plate',
  topEdge: 'top edge',
  lens: 'lens',
  lensUnknown: 'lens: distance not recorded',
  lamp: 'lamp',
  lampAt: (distance: number | null) =>
    distance === null ? 'lamp: distance not recorded' : `lamp, ${millimetres(distance)}`,
  diffuser: 'diffuser',
  lampsWithoutPlace: (count: number) =>
    count === 1 ? 'lamp: place not recorded' : `${count} lamps: place not recorded`,
  panel: (distance: number | null) =>
    distance === null
      ? 'panel: distance not recorded'
      : `panel, ${millimetres(distance)} along the light`,
  panelUnknown: 'panel: side not recorded',
  panelSize: 'panel: size not recorded',
  glass: (thickness: number | null) =>
    thickness === null ? 'glass: thickness not recorded' : `glass, ${millimetres(thickness)}`,
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
  angle: degrees,
  ruler: (length: number) => millimetres(length),
  notToScale: 'What is dashed and grey is not recorded, and its place is not to scale.',
} as const;
