/** A plate's stage data as small as it can be, for tests of the viewer's pure modules. */
import type { StageData, StageView } from '../../src/viewer/stage-data.ts';

function view(id: string, parts: Partial<StageView> = {}): StageView {
  return {
    id,
    name: id,
    reading: 'none',
    width: 4000,
    height: 3000,
    registered: true,
    why: null,
    digest: `${id}000000000000`.replaceAll(/[^0-9a-f]/g, '0').slice(0, 12),
    service: `/base/plates/quay/views/${id}`,
    still: { width: 1000, height: 750 },
    alt: id,
    layers: [],
    captures: [id],
    sitting: 'sitting',
    ...parts,
  };
}

export const data: StageData = {
  slug: 'quay',
  pages: '/base/plates/',
  title: 'A quay',
  objectNumber: 'FQ 1',
  credit: 'The museum',
  rights: 'https://creativecommons.org/publicdomain/zero/1.0/',
  reversed: true,
  frame: {
    width: 4000,
    height: 3000,
    pixelsPerMillimetre: 40,
    scaleUncertainty: 0.1,
    scaleFrom: 'target',
  },
  pair: { positive: 'normal', negative: 'axial' },
  turningPoint: null,
  stills: null,
  looks: [],
  spots: [
    {
      id: 'mast',
      title: 'The mast',
      note: 'Two ropes.',
      view: 'axial',
      region: { x: 100, y: 200, width: 300, height: 400 },
    },
  ],
  views: [
    view('normal', { reading: 'positive' }),
    view('axial', { reading: 'negative' }),
    view('uv', { registered: false, why: 'too few tiles agreed', width: 900, height: 700 }),
  ],
};
