import { expect, test } from 'vitest';
import { plateTextWithout, sittingWithout } from '../../../src/publish/deposit/without-withheld.ts';

const names = ['veiled.tif', 'veiled'];
const veiled = {
  spots: new Set(['a']),
  steps: new Map([['l', new Set([0])]]),
  looks: new Set(['m']),
};
const left = { ids: ['veiled'], names, veiled };

test('a sitting loses the capture, comments and sentences that name it, and nothing else', () => {
  const text = `# veiled shows a face
date: 2024-05-01 # a Tuesday
base: normal
captures:
  - { id: normal, file: normal.tif, note: Softer than veiled. }
  # the second one
  - id: veiled
    file: veiled.tif
`;
  const without = sittingWithout(text, left);
  expect(without).not.toContain('veiled');
  expect(without).toContain('date: 2024-05-01 # a Tuesday');
  expect(without).toContain('Softer than [left out].');
  expect(sittingWithout(text, { ids: [], names: [] })).toBe(text);
});

test('a plate loses its list, and the spots and steps that show what is withheld', () => {
  const text = `---
title: A plate
withheld: [veiled]
spots:
  - { id: a, region: "1,1,2,2", title: A, view: veiled }
  - { id: b, region: "1,1,2,2", title: B }
looks:
  - id: l
    title: L
    steps:
      - { text: One, of: [veiled] }
      - { text: Two, of: [normal] }
  - { id: m, title: M, steps: [{ text: Three, of: [veiled] }] }
---

An unveiled text.
`;
  const without = plateTextWithout(text, left);
  expect(without).not.toMatch(/\bveiled\b/);
  expect(without).toContain('id: b');
  expect(without).toContain('text: Two');
  expect(without).not.toContain('Three');
  expect(without.endsWith('---\n\nAn unveiled text.\n')).toBe(true);
});

test('a translation loses the same spots and steps, which it names without the capture', () => {
  const text = `---
# La plaque de veiled.tif
spots: [{ id: b, title: Le quai }, { id: a, title: Le visage }]
looks: [{ id: l, steps: [{ text: Un }, { text: Deux }] }, { id: m, title: Trois }]
---

Texte.
`;
  const without = plateTextWithout(text, left);
  expect(without).toContain('Le quai');
  expect(without).toContain('Deux');
  expect(without).not.toMatch(/veiled|visage|Un\b|Trois/);
  expect(without.endsWith('---\n\nTexte.\n')).toBe(true);
});
