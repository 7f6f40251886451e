/**
 * How a museum wants its exhibit to look: colours and logo from `collection.md`, and the style
 * sheet `theme.css` beside it. A part with a fault is left out and told of, and the exhibit is
 * built in our own colours there; contrast is told with its figures.
 */
import { readFile, realpath, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { logoFault } from '../../publish/theme/logo-fault.ts';
import {
  enoughForText,
  themeContrasts,
  type Contrast,
  type Mode,
} from '../../publish/theme/palette.ts';
import { readStyleSheet, type StyleSheet } from '../../publish/theme/style-sheet.ts';
import type { CollectionRecord } from '../../records/collection.ts';
import { finding, type Finding } from '../../records/finding.ts';
import { liesWithin, readText } from './read-text.ts';

export const themeFile = 'theme.css';

export interface Theme {
  /** Whether `theme.css` goes to the pages. */
  readonly hasStyle: boolean;
  /** Files beside collection.md, where they are sound. */
  readonly logo: string | null;
  readonly logoDark: string | null;
  /** Empty where nothing of ours was changed. */
  readonly contrasts: readonly Contrast[];
  readonly findings: readonly Finding[];
}

/** @param root Real path of the content folder. */
export async function readTheme(
  folder: string,
  root: string,
  collection: CollectionRecord,
): Promise<Theme> {
  const { theme = {}, accent } = collection;
  const { sheet, findings } = await readSheet(folder, root);
  const logos = [];
  for (const name of [theme.logo, theme.logoDark]) {
    const fault = name === undefined ? null : await faultOfLogo(folder, root, name);
    if (fault) findings.push(fault);
    logos.push(fault ? null : (name ?? null));
  }
  const changed = accent !== undefined || theme.light || theme.dark || sheet;
  const contrasts = changed ? themeContrasts({ accent, ...theme }, sheet?.overrides) : [];
  findings.push(...contrasts.filter(({ ratio }) => ratio < enoughForText).map(tooFaint));
  const [logo, logoDark] = logos;
  return { hasStyle: sheet !== null, logo, logoDark, contrasts, findings };
}

const names: Readonly<Record<string, string>> = {
  ink: 'text',
  soft: 'quiet text',
  accent: 'the accent',
  'on-velvet': 'the viewer’s text',
  'on-velvet-soft': 'the viewer’s quiet text',
};
const times: Readonly<Record<Mode, string>> = { light: 'by day', dark: 'by night' };

function tooFaint({ text, ground, mode, ratio }: Contrast): Finding {
  const figure = ratio.toFixed(2);
  return finding({
    level: 'error',
    plate: '',
    file: 'collection.md',
    code: 'low-contrast',
    message: `The contrast of ${names[text]} on its ground (--${text} on --${ground}) is ${figure} : 1 ${times[mode]}; readers need ${enoughForText} : 1.`,
    remedy: `Choose a darker and a lighter colour in "theme" or in ${themeFile} (WCAG 2.2, criterion 1.4.3).`,
    measured: { value: ratio, unit: ': 1', expected: `at least ${enoughForText}` },
  });
}

const ownAbout = { level: 'error', plate: '', file: themeFile } as const;

async function readSheet(
  folder: string,
  root: string,
): Promise<{ sheet: StyleSheet | null; findings: Finding[] }> {
  const text = await readText(join(folder, themeFile), { root, plate: '', file: themeFile });
  if (!text.ok) return { sheet: null, findings: text.absent ? [] : [text.finding] };
  const read = readStyleSheet(text.text);
  if (!read.ok) {
    const message = `${themeFile} is not CSS: ${read.reason}.`;
    const remedy = 'Correct that line; until then the exhibit is built without it.';
    const broken = finding({ ...ownAbout, line: read.line, code: 'bad-style', message, remedy });
    return { sheet: null, findings: [broken] };
  }
  const faults = await faultsOfLoading(folder, root, read.sheet);
  if (faults.length > 0) return { sheet: null, findings: faults };
  const unread = read.sheet.unread.map(({ name, value, line }) =>
    finding({
      ...ownAbout,
      level: 'warning',
      line,
      code: 'contrast-unknown',
      message: `--${name} is set to "${value}", whose contrast is not reckoned.`,
      remedy: 'Write the colour as #rrggbb to have it checked, or check it yourself.',
    }),
  );
  return { sheet: read.sheet, findings: unread };
}

async function faultsOfLoading(
  folder: string,
  root: string,
  { addresses, imports }: StyleSheet,
): Promise<Finding[]> {
  const faults = imports.map((line) =>
    finding({
      ...ownAbout,
      line,
      code: 'style-import',
      message: `${themeFile} imports another style sheet.`,
      remedy: 'Put its rules into the one file.',
    }),
  );
  for (const { address, line } of addresses) {
    const said = await faultOfAddress(folder, root, address);
    if (said) faults.push(finding({ ...ownAbout, line, ...said }));
  }
  return faults;
}

async function faultOfAddress(folder: string, root: string, address: string) {
  if (address.startsWith('#') || /^data:image\/(?:png|jpeg|webp|svg\+xml)[;,]/i.test(address)) return null;
  const about = `${themeFile} loads "${address.slice(0, 100)}"`;
  if (/^([a-z][a-z0-9+.-]*:|\/)/i.test(address)) {
    const message = `${about}, which is not a file of this exhibit; its pages ask nobody else for anything.`;
    return { code: 'other-host', message, remedy: 'Put the file beside collection.md and name it by its path from there.' };
  }
  const path = join(folder, plainPath(address));
  const real = await realpath(path).catch(() => null);
  if (real !== null && liesWithin(real, root) && (await stat(real)).isFile()) return null;
  const why = real === null ? 'but there is no such file' : 'which is not a file inside the content folder';
  return { code: 'no-file', message: `${about}, ${why}.`, remedy: 'Put the file beside collection.md and correct its path.' };
}

/** An address as the path of a file: without query and fragment, letters for `%20`. */
function plainPath(address: string): string {
  const path = address.replace(/[?#].*$/, '');
  try {
    return decodeURI(path);
  } catch {
    return path;
  }
}

async function faultOfLogo(folder: string, root: string, name: string): Promise<Finding | null> {
  const about = { level: 'error', plate: '', file: 'collection.md', field: 'theme.logo' } as const;
  const remedy = 'Save it once more as a plain drawing or picture; until then the name stands alone.';
  try {
    const path = await realpath(join(folder, name));
    if (!liesWithin(path, root) || !(await stat(path)).isFile()) {
      const message = `The logo ${name} is not a file inside the content folder.`;
      return finding({ ...about, code: 'leads-out', message, remedy });
    }
    const fault = logoFault(name, await readFile(path));
    return fault === null
      ? null
      : finding({ ...about, code: 'bad-logo', message: `The logo ${name} ${fault}.`, remedy });
  } catch (error) {
    const { code = 'unknown' } = error as NodeJS.ErrnoException;
    const message =
      code === 'ENOENT'
        ? `The logo ${name} is not in the content folder.`
        : `The logo ${name} cannot be read (${code}).`;
    const absent = 'Put the file beside collection.md, or take the field out.';
    return finding({ ...about, code: 'no-file', message, remedy: absent });
  }
}
