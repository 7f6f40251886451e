/** The exhibit in a museum's own colours: the parts of `collection.md` that set how it looks. */
import { z } from 'zod';
import { text, webAddress } from './fields.ts';

const colourPhrase = 'a colour written as #rrggbb in quotes, such as "#a9823c"';
const logoPhrase = 'the name of an SVG, PNG or WebP file beside collection.md, such as "logo.svg"';

export const colour = z.string(colourPhrase).regex(/^#[0-9a-f]{6}$/i, colourPhrase);

const coloursOfMode = z.strictObject({
  /** The ground of the pages. */
  paper: colour,
  /** Colour of the text; quiet text, lines and washes are mixed from the two. */
  ink: colour,
});

const logoFile = z.string(logoPhrase).regex(/^[\w-][\w.-]*\.(svg|png|webp)$/, logoPhrase);

export const themeSchema = z.strictObject({
  /** Colours by day. */
  light: coloursOfMode.optional(),
  /** Colours by night. */
  dark: coloursOfMode.optional(),
  /** The sign of the institution, before the name of the exhibit. */
  logo: logoFile.optional(),
  /** The same for the dark page, where one does not do for both. */
  logoDark: logoFile.optional(),
});

export type ThemeRecord = z.output<typeof themeSchema>;

/** A line of the footer: words, and where they lead. */
export const footerLine = z.strictObject({ text, link: webAddress.optional() });
