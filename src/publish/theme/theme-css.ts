/** The rules that put a museum's colours on every page. */
import { palette, type Palette, type ThemeColours } from './palette.ts';

function declarations(colours: Palette): string {
  return Object.entries(colours)
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(';');
}

/** Custom properties for `:root`, by day and by night, as one line. */
export function themeCss(given: ThemeColours): string {
  const [light, dark] = [palette('light', given), palette('dark', given)];
  // The viewer is dark at any hour, so it asks for the accent of the night by its own name.
  const day = declarations({ ...light, 'accent-dark': dark['accent'] ?? '' });
  return `:root{${day}}@media (prefers-color-scheme:dark){:root{${declarations(dark)}}}`;
}
