/**
 * What a file's name says about the capture. Technicians name files after the lamp more often
 * than not; what a name does not say is left for a person.
 */
import { processes, type Process, type Reading, type SetupKind } from '../../records/vocabulary.ts';

export interface NameGuess {
  readonly setup: SetupKind | null;
  readonly reading: Reading | null;
  readonly set: 'bracket' | 'lights' | 'mosaic' | null;
  readonly aid: 'blank' | 'target' | 'scale' | null;
}

const setups: readonly (readonly [SetupKind, Reading, readonly string[]])[] = [
  ['raking', 'positive', ['raking', 'rake', 'raked', 'grazing']],
  ['axial', 'negative', ['axial', 'coaxial', 'specular', 'negative', 'neg', 'mirror']],
  ['transmitted', 'none', ['transmitted', 'transmission', 'backlit', 'backlight']],
  ['ultraviolet', 'none', ['ultraviolet', 'uv', 'uva', 'fluorescence']],
  ['infrared', 'none', ['infrared', 'ir']],
  ['scan', 'none', ['scan', 'scanned', 'scanner', 'flatbed']],
  ['normal', 'positive', ['normal', 'positive', 'pos', 'diffuse', 'side']],
];
const sets = {
  bracket: ['bracket', 'bracketed', 'exposures', 'exposure', 'hdr', 'ev'],
  lights: ['lights', 'lamps', 'dome', 'relight', 'relighting'],
  mosaic: ['mosaic', 'tile', 'tiles', 'panel', 'part', 'detail', 'closeup'],
} as const;
const aids = {
  blank: ['blank', 'flat', 'flatfield', 'white'],
  target: ['target', 'checker', 'patches', 'chart'],
  scale: ['scale', 'ruler'],
} as const;

/** The words of a name: `Raking_left-02.TIF` is raking, left, 02. */
export function nameWords(name: string): string[] {
  return name
    .replace(/\.[^.]*$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .flatMap((word) => word.match(/\p{L}+|\p{N}+/gu) ?? []);
}

function find<K extends string>(
  lists: Readonly<Record<K, readonly string[]>>,
  words: readonly string[],
): K | null {
  const entries = Object.entries(lists) as [K, readonly string[]][];
  return entries.find(([, list]) => words.some((word) => list.includes(word)))?.[0] ?? null;
}

/** What the words of a path, folders included, say. */
export function guessFromName(path: string): NameGuess {
  const words = nameWords(path.split('/').join(' '));
  const named = setups.find(([, , list]) => words.some((word) => list.includes(word)));
  const said = words.includes('positive') || words.includes('pos') ? 'positive' : null;
  const reversed = words.includes('negative') || words.includes('neg') ? 'negative' : null;
  return {
    setup: named?.[0] ?? null,
    reading: said ?? reversed ?? named?.[1] ?? null,
    set: find(sets, words),
    aid: find(aids, words),
  };
}

/** A process that a name mentions. */
export function processIn(names: readonly string[]): Process | null {
  const words = names.join(' ').toLowerCase();
  const found = Object.keys(processes).filter((process) => {
    return process !== 'other' && new RegExp(`${process.replace(' ', '[ _-]?')}s?\\b`).test(words);
  });
  return found.length === 1 ? (found[0] as Process) : null;
}
