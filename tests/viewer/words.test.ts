import { describe, expect, test } from 'vitest';
import { citation } from '../../src/viewer/cite-tool.ts';
import { nameViews, type NamedView } from '../../src/viewer/view-words.ts';
import { settleState } from '../../src/viewer/settle-state.ts';
import { parseViewState } from '../../src/viewer/view-address.ts';
import { firstState } from '../../src/viewer/view-state.ts';
import { data } from './stage-fixture.ts';
import { stage } from '../../src/words/en/stage.ts';
import './english.ts';

const page = 'https://museum.example/plates/quay/';
/** A view by its capture, with the capture's own kind and number of photographs. */
function named(
  ...parts: (Partial<NamedView> & { readonly id: string; readonly from?: string })[]
): ReadonlyMap<string, string> {
  const views = parts.map(({ from, ...view }) => ({
    ...{ reading: 'positive' as const, setupKind: 'normal' as const, kind: 'capture' as const },
    ...{ captures: [from ?? view.id], sitting: '2026-05-04' },
    ...view,
  }));
  const sittings = [...new Set(views.map(({ sitting }) => sitting))].map((id) => ({
    ...{ id, date: id },
    captures: [
      { id: 'bracket', kind: 'bracket' as const, files: [1, 2, 3, 4, 5] },
      { id: 'lights', kind: 'lights' as const, files: Array.from({ length: 48 }) },
      { id: 'close', kind: 'mosaic' as const, files: [1, 2, 3, 4] },
      { id: 'normal', kind: 'single' as const, files: [1] },
    ],
  }));
  return nameViews(views, sittings, 'en', stage);
}
const list = (names: ReadonlyMap<string, string>) => [...names.values()];

describe('names of views', () => {
  test('say the reading and the light', () => {
    const names = named(
      { id: 'n' },
      { id: 'u', reading: 'none', setupKind: 'ultraviolet' },
      { id: 'the-back', reading: 'none', setupKind: 'other' },
    );
    expect(list(names)).toEqual(['Positive, side lamp', 'Ultraviolet', 'the back']);
  });

  test('of many photographs say how they were made, and which of them one is', () => {
    const names = named(
      { id: 'normal' },
      { id: 'bracket', kind: 'merge' },
      { id: 'bracket-local', from: 'bracket', kind: 'merge' },
      { id: 'bracket-2', from: 'bracket' },
      { id: 'lights', kind: 'relight' },
      { id: 'lights-relief', from: 'lights', kind: 'derived', reading: 'none' },
      { id: 'lights-04', from: 'lights' },
      { id: 'close', kind: 'mosaic' },
      { id: 'close-3', from: 'close' },
      { id: 'raking-adds', from: 'raking-right', kind: 'derived', reading: 'none' },
    );
    expect(list(names)).toEqual([
      'Positive, side lamp',
      'Positive, merged exposures',
      'Positive, merged exposures, detail brought out',
      'Positive, exposure 2 of 5',
      'Positive, lamp that can be moved',
      'Relief of the surface',
      'Positive, lamp 4 of 48',
      'Positive, joined close-ups',
      'Positive, close-up 3 of 4',
      'What raking light adds',
    ]);
  });

  test('that would be the same are told apart by the day, then by their ids', () => {
    const two = named(
      { id: 'normal-a', sitting: '2016-05-24' },
      { id: 'normal-b', sitting: '2023-10-17' },
    );
    expect(list(two)).toEqual([
      'Positive, side lamp, 24 May 2016',
      'Positive, side lamp, 17 October 2023',
    ]);
    const raking = { setupKind: 'raking' } as const;
    const lamps = named({ id: 'raking-upper-left', ...raking }, { id: 'west', ...raking });
    expect(list(lamps)).toEqual([
      'Positive, raking lamp, upper left',
      'Positive, raking lamp, west',
    ]);
  });
});

describe('a citation', () => {
  const state = {
    ...firstState(data, false),
    mode: 'look' as const,
    region: { x: 1, y: 2, width: 3, height: 4 },
  };
  const words = citation(data, state, page, '2026-11-24');

  test('names the owner, the plate, the view, the region, the picture and the day', () => {
    expect(words).toBe(
      'The museum, FQ 1, “A quay”, view Look (normal), region 1,2,3,4 in pixels of the plate’s frame. ' +
        `Picture ${data.views[0].digest}, read 2026-11-24. ` +
        `${page}#view=look&of=normal&xywh=pixel:1,2,3,4&was=${data.views[0].digest}`,
    );
  });

  test('holds an address that opens what it describes, and notices a changed picture', () => {
    const fragment = words.slice(words.indexOf('#'));
    const same = settleState(data, parseViewState(fragment)!, firstState(data, false));
    expect(same.state.region).toEqual(state.region);
    expect(same.said).toEqual([]);
    const views = data.views.map((v) => ({ ...v, digest: 'ffffffffffff' }));
    const later = settleState({ ...data, views }, parseViewState(fragment)!, state);
    expect(later.said[0]).toMatch(/has changed/);
  });
});
