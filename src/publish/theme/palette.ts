/**
 * The colours of an exhibit by day and by night. A museum gives a ground, a colour of text and
 * an accent; quiet text, lines and washes follow from them, so that no page is left half in
 * somebody else's colours. What it does not give is ours (`src/styles/tokens.css`).
 */
import { contrast, legible, mixed } from './contrast.ts';

/** Success criterion 1.4.3 of WCAG 2.2, for text. */
export const enoughForText = 4.5;

export type Mode = 'light' | 'dark';
export const modes = ['light', 'dark'] as const satisfies readonly Mode[];

/** What `collection.md` may give of one mode, each #rrggbb. */
export interface GivenColours {
  readonly paper?: string | undefined;
  readonly ink?: string | undefined;
}

export interface ThemeColours {
  /** #rrggbb; the brass of a mat where nothing is said. */
  readonly accent?: string | undefined;
  readonly light?: GivenColours | undefined;
  readonly dark?: GivenColours | undefined;
}

/** Names of the custom properties, without their hyphens, and their colours as #rrggbb. */
export type Palette = Readonly<Record<string, string>>;

/** Our own colours, as the style sheet has them. */
export const ownColours = {
  light: { paper: '#faf8f3', ink: '#24201b', soft: '#655c51', wash: '#f1ece2' },
  dark: { paper: '#1b1917', ink: '#e9e3d8', soft: '#afa597', wash: '#24211e' },
} as const satisfies Record<Mode, Palette>;

/** The viewer's ground, which is the same by day and by night. */
export const velvet = {
  velvet: '#16110f',
  'on-velvet': '#ece4d7',
  'on-velvet-soft': '#b3a797',
} as const satisfies Palette;

/** The brass of a mat. */
const brass = '#8a6a24';

/**
 * A little more than is asked on paper, since washes lie between; more on charcoal, where thin
 * brass lines next to bright text look duller than they measure.
 */
const enoughForAccent = { light: 4.75, dark: 7 } as const;

/** Every colour of a mode that follows from what was given; only the accent where nothing was. */
export function palette(mode: Mode, given: ThemeColours): Palette {
  const own = ownColours[mode];
  const { paper = own.paper, ink = own.ink } = given[mode] ?? {};
  const accent = legible(given.accent ?? brass, paper, enoughForAccent[mode]);
  if (given[mode] === undefined) return { accent };
  const wash = mixed(paper, ink, 0.045);
  return {
    accent,
    paper,
    ink,
    wash,
    // The wash is the worse ground of the two, and text stands on both.
    soft: legible(mixed(ink, paper, 0.3), wash, enoughForText + 0.1),
    rule: mixed(paper, ink, 0.15),
    'rule-strong': mixed(paper, ink, 0.42),
  };
}

export interface Contrast {
  readonly text: string;
  readonly ground: string;
  readonly mode: Mode;
  /** 1 to 21. */
  readonly ratio: number;
}

const pairs = [
  ['ink', 'paper'],
  ['ink', 'wash'],
  ['soft', 'paper'],
  ['soft', 'wash'],
  ['accent', 'paper'],
  ['on-velvet', 'velvet'],
  ['on-velvet-soft', 'velvet'],
] as const;

/**
 * Contrast of every pair of text and ground in both modes.
 *
 * @param overrides What a style sheet of the museum sets, by mode.
 */
export function themeContrasts(
  given: ThemeColours,
  overrides: Readonly<Record<Mode, Palette>> = { light: {}, dark: {} },
): Contrast[] {
  return modes.flatMap((mode) => {
    const colours: Palette = {
      ...velvet,
      ...ownColours[mode],
      ...palette(mode, given),
      ...overrides[mode],
    };
    return pairs.map(([text, ground]) => ({
      text,
      ground,
      mode,
      ratio: contrast(colours[text] ?? '', colours[ground] ?? ''),
    }));
  });
}
