import { describe, expect, test } from 'vitest';
import { groupFiles, type FoundFile } from '../../../src/pipeline/new-plate/group-files.ts';
import { silentExif } from '../../../src/raster/camera-exif.ts';

const file = (name: string, seconds: number | null = null, width = 300): FoundFile => ({
  name,
  width,
  height: 200,
  exif: { ...silentExif, seconds },
});
const groups = (files: readonly FoundFile[]) =>
  groupFiles(files).map(({ id, kind, files: members }) => `${id} ${kind} ${members.length}`);

describe('numbered files are', () => {
  test('a bracket when their exposures rise or fall', () => {
    expect(groups([file('a-1.tif', 0.1), file('a-2.tif', 0.2), file('a-3.tif', 0.4)])).toEqual([
      'a bracket 3',
    ]);
  });

  test('captures of their own when exposures do not, when there are two, or when EXIF is silent', () => {
    const two = [file('DSC_0001.tif', 0.1), file('DSC_0002.tif', 0.4)];
    expect(groups(two)).toEqual(['dsc-0001 single 1', 'dsc-0002 single 1']);
    const mixed = [file('a-1.tif', 0.1), file('a-2.tif', 0.4), file('a-3.tif', 0.2)];
    expect(groups(mixed)).toEqual(['a-1 single 1', 'a-2 single 1', 'a-3 single 1']);
    const silent = [file('a-1.tif'), file('a-2.tif'), file('a-3.tif')];
    expect(groups(silent)).toHaveLength(3);
  });

  test('what their name says they are', () => {
    expect(groups([file('bracket-1.tif'), file('bracket-2.tif')])).toEqual(['bracket bracket 2']);
    expect(groups([file('lights_01.tif'), file('lights_02.tif')])).toEqual(['lights lights 2']);
  });

  test('many lights when they are many of the same exposure', () => {
    const many = Array.from({ length: 9 }, (_, k) => file(`d-${k + 1}.tif`, 0.5));
    expect(groups(many)).toEqual(['d lights 9']);
  });

  test('not one set when their sizes differ', () => {
    const files = [file('a-1.tif', 0.1), file('a-2.tif', 0.2), file('a-3.tif', 0.4, 301)];
    expect(groups(files)).toHaveLength(3);
  });
});

test('close-ups with two numbers are a mosaic with its grid', () => {
  const files = ['0-0', '0-1', '1-0', '1-1'].map((cell) => file(`mosaic-${cell}.tif`));
  expect(groups(files)).toEqual(['mosaic mosaic 4']);
});

test('ids are unique and can stand in an address', () => {
  const files = ['Raking Left.tif', 'raking_left.jpg', '写真.tif', 'Été.tif'].map((name) =>
    file(name),
  );
  expect(groupFiles(files).map(({ id }) => id)).toEqual([
    'raking-left',
    'raking-left-2',
    'capture',
    'ete',
  ]);
});
