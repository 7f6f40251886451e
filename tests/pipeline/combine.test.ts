import { describe, expect, test } from 'vitest';
import { findPair } from '../../src/pipeline/combine.ts';
import type { PlannedView } from '../../src/pipeline/combine/part.ts';

const view = (
  id: string,
  reading: PlannedView['reading'],
  setupKind: PlannedView['setupKind'],
  registered = true,
) => ({ id, reading, setupKind, registered }) as PlannedView;

describe('findPair', () => {
  test('prefers the set-ups that are made for the two readings', () => {
    const views = [
      view('raking', 'positive', 'raking'),
      view('normal', 'positive', 'normal'),
      view('window', 'negative', 'other'),
      view('axial', 'negative', 'axial'),
    ];
    expect(findPair(views)).toEqual({ positive: 'normal', negative: 'axial' });
  });

  test('takes what there is where those were not used', () => {
    const views = [view('raking', 'positive', 'raking'), view('window', 'negative', 'other')];
    expect(findPair(views)).toEqual({ positive: 'raking', negative: 'window' });
  });

  test('never pairs views that do not lie on each other', () => {
    const views = [view('normal', 'positive', 'normal'), view('axial', 'negative', 'axial', false)];
    expect(findPair(views)).toBeNull();
  });

  test('is null for a plate with one reading', () => {
    expect(findPair([view('normal', 'positive', 'normal')])).toBeNull();
    expect(findPair([view('normal', 'mixed', 'normal'), view('b', 'none', 'axial')])).toBeNull();
  });
});
