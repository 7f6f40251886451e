import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { contrast } from '../../../src/publish/theme/contrast.ts';
import {
  enoughForText,
  modes,
  ownColours,
  palette,
  themeContrasts,
  velvet,
} from '../../../src/publish/theme/palette.ts';
import { themeCss } from '../../../src/publish/theme/theme-css.ts';

const tokens = readFileSync(
  join(import.meta.dirname, '..', '..', '..', 'src', 'styles', 'tokens.css'),
  'utf8',
);

describe('our own colours', () => {
  test('are those of the style sheet', () => {
    const [light, dark] = tokens.split('@media');
    const token = (part: string, name: string) =>
      new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(part)?.[1];
    for (const [name, colour] of Object.entries(ownColours.light)) {
      expect([name, token(light, name)]).toEqual([name, colour]);
    }
    for (const [name, colour] of Object.entries(ownColours.dark)) {
      expect([name, token(dark, name)]).toEqual([name, colour]);
    }
    for (const [name, colour] of Object.entries(velvet)) {
      expect([name, token(light, name)]).toEqual([name, colour]);
    }
  });

  test('keep 4.5 to 1 wherever text stands on a ground, by day and by night', () => {
    const all = themeContrasts({});
    expect(all).toHaveLength(14);
    for (const { text, ground, mode, ratio } of all) {
      expect(ratio, `${text} on ${ground}, ${mode}`).toBeGreaterThanOrEqual(enoughForText);
    }
  });
});

describe('a museum’s colours', () => {
  const blue = {
    accent: '#0057b7',
    light: { paper: '#ffffff', ink: '#101828' },
    dark: { paper: '#0b1220', ink: '#e6edf7' },
  };

  test('give every other colour of a page, each legible on both grounds', () => {
    for (const mode of modes) {
      const colours = palette(mode, blue);
      expect(Object.keys(colours).sort()).toEqual(
        ['accent', 'ink', 'paper', 'rule', 'rule-strong', 'soft', 'wash'].sort(),
      );
      expect(colours).toMatchObject(blue[mode]);
      for (const ground of ['paper', 'wash']) {
        expect(contrast(colours['soft'], colours[ground])).toBeGreaterThanOrEqual(enoughForText);
      }
    }
  });

  test('that cannot be told apart are found with their figure', () => {
    const faint = themeContrasts({ light: { paper: '#ffffff', ink: '#949494' } });
    // 3.0335: the same pair as in the test of contrast.
    expect(
      faint.find(({ text, ground }) => text === 'ink' && ground === 'paper')?.ratio,
    ).toBeCloseTo(3.0335, 4);
  });

  test('of a style sheet take the place of those of the record', () => {
    const overrides = { light: { ink: '#777777', paper: '#ffffff' }, dark: {} };
    const found = themeContrasts(blue, overrides).filter(({ ratio }) => ratio < enoughForText);
    expect(found.map(({ text, ground, mode }) => [text, ground, mode])).toContainEqual([
      'ink',
      'paper',
      'light',
    ]);
    expect(found.every(({ mode }) => mode === 'light')).toBe(true);
  });

  test('are rules for day and night, and the night’s accent by day for the viewer', () => {
    expect(themeCss({ accent: '#a9823c' })).toMatch(
      /^:root\{--accent:(#[0-9a-f]{6});--accent-dark:(#[0-9a-f]{6})\}@media \(prefers-color-scheme:dark\)\{:root\{--accent:\2\}\}$/,
    );
    expect(themeCss(blue)).toContain('--paper:#ffffff');
  });
});
