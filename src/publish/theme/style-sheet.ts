/**
 * What a museum's own style sheet does to the exhibit: which of our colours it sets, and what
 * it asks the browser to load. The sheet itself goes to the pages as it is.
 *
 * References
 * - W3C (2024). CSS Values and Units Module Level 4, section 4.5, resource locators.
 * - W3C (2022). Media Queries Level 5, prefers-color-scheme.
 */
import postcss, { CssSyntaxError, type AtRule, type Declaration, type Node } from 'postcss';
import { ownColours, velvet, type Mode, type Palette } from './palette.ts';

export interface StyleSheet {
  /** Our colours that it sets to #rrggbb, by mode. */
  readonly overrides: Readonly<Record<Mode, Palette>>;
  /** Our colours that it sets in a way whose contrast is not reckoned. */
  readonly unread: readonly { readonly name: string; readonly value: string; line: number }[];
  /** What it loads, as written. */
  readonly addresses: readonly { readonly address: string; readonly line: number }[];
  /** Lines with `@import`. */
  readonly imports: readonly number[];
}

export type ReadStyleSheet =
  { ok: true; sheet: StyleSheet } | { ok: false; reason: string; line: number };

const checked = new Set([...Object.keys(ownColours.light), 'accent', ...Object.keys(velvet)]);

/** Reads the sheet's text; never throws for what is in it. */
export function readStyleSheet(css: string): ReadStyleSheet {
  let root;
  try {
    root = postcss.parse(css);
  } catch (error) {
    if (!(error instanceof CssSyntaxError)) throw error;
    return { ok: false, reason: error.reason, line: error.line ?? 1 };
  }
  const overrides: Record<Mode, Record<string, string>> = { light: {}, dark: {} };
  const unread: { name: string; value: string; line: number }[] = [];
  const addresses: { address: string; line: number }[] = [];
  const imports: number[] = [];
  root.walkAtRules('import', (rule) => {
    imports.push(lineOf(rule));
  });
  root.walkDecls((declaration) => {
    const line = lineOf(declaration);
    for (const address of loadedBy(declaration.value)) addresses.push({ address, line });
    const name = declaration.prop.slice(2);
    if (!declaration.prop.startsWith('--') || !checked.has(name)) return;
    const colour = fullHex(declaration.value);
    if (colour === null) unread.push({ name, value: declaration.value, line });
    else if (isDark(declaration)) overrides.dark[name] = colour;
    else {
      // By night too, until a rule for the night says otherwise.
      overrides.light[name] = colour;
      overrides.dark[name] ??= colour;
    }
  });
  return { ok: true, sheet: { overrides, unread, addresses, imports } };
}

function lineOf(node: AtRule | Declaration): number {
  return node.source?.start?.line ?? 1;
}

function loadedBy(value: string): string[] {
  const found = value.matchAll(/(?:url|src)\(\s*(?:"([^"]*)"|'([^']*)'|([^)\s]*))\s*\)/gi);
  const sets = value.matchAll(/image-set\(([^)]*)\)/gi);
  const quoted = [...sets].flatMap(([, inner = '']) => [...inner.matchAll(/"([^"]*)"|'([^']*)'/g)]);
  return [...found, ...quoted].map(([, a, b, c]) => a ?? b ?? c ?? '');
}

function fullHex(value: string): string | null {
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(value.trim());
  if (short)
    return `#${short
      .slice(1)
      .map((digit) => digit + digit)
      .join('')}`.toLowerCase();
  const whole = /^#[0-9a-f]{6}$/i.exec(value.trim());
  return whole ? whole[0].toLowerCase() : null;
}

function isDark(declaration: Declaration): boolean {
  let node: Node | undefined = declaration.parent;
  for (; node; node = node.parent) {
    if (isAtRule(node) && /prefers-color-scheme:\s*dark/.test(node.params)) return true;
  }
  return false;
}

function isAtRule(node: Node): node is AtRule {
  return node.type === 'atrule';
}
