import { describe, expect, test } from 'vitest';
import { citation } from '../../src/viewer/cite-tool.ts';
import { nameViews } from '../../src/viewer/view-words.ts';
import { settleState } from '../../src/viewer/settle-state.ts';
import { parseViewState } from '../../src/viewer/view-address.ts';
import { firstState } from '../../src/viewer/view-state.ts';
import { data } from './stage-fixture.ts';

const page = 'https://museum.example/plates/quay/';
describe('names of views', () => {
  test('say the reading and the light', () => {
    const names = nameViews([
      { id: 'n', reading: 'positive', setupKind: 'normal' },
      { id: 'u', reading: 'none', setupKind: 'ultraviolet' },
      { id: 'back', reading: 'none', setupKind: 'other' },
    ]);
    expect([...names.values()]).toEqual(['Positive, side lamp', 'Ultraviolet', 'back']);
  });

  test('that would be the same carry their ids', () => {
    const raking = { reading: 'positive', setupKind: 'raking' } as const;
    const names = nameViews([
      { id: 'east', ...raking },
      { id: 'west', ...raking },
    ]);
    expect(names.get('west')).toBe('Positive, raking lamp (west)');
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
