import { afterEach, describe, expect, test, vi } from 'vitest';
import { describedPlanes } from '../../src/viewer/data-planes.ts';
import { data } from './stage-fixture.ts';
import './english.ts';

const described = {
  ...{ version: 1, kind: 'lamp', width: 640, height: 480, tile: 256, planes: 8 },
  ...{ format: 'webp', levels: 3 },
};
const answering = (body: unknown, status = 200) => {
  vi.stubGlobal('fetch', () =>
    Promise.resolve(
      new Response(typeof body === 'string' ? body : JSON.stringify(body), { status }),
    ),
  );
};
afterEach(() => vi.unstubAllGlobals());

describe('a description of data planes', () => {
  const [view] = data.views;
  const ask = () => describedPlanes(view, 'lamp');

  test('of the version that is drawn comes back', async () => {
    answering(described);
    await expect(ask()).resolves.toMatchObject(described);
  });

  test.each([
    ['of a later version', { ...described, version: 2 }],
    ['without a version', { ...described, version: undefined }],
    ['without sizes', { version: 1 }],
    ['that is no JSON', '<!doctype html>'],
    ['that is nothing', null],
  ])('%s is refused with a sentence that names it, and nothing is drawn', async (_, body) => {
    answering(body);
    await expect(ask()).rejects.toThrow(`${view.service}/lamp/layer.json`);
  });

  test('that the host does not have is told with its answer', async () => {
    answering('', 404);
    await expect(ask()).rejects.toThrow('404');
  });
});
