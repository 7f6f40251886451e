import { describe, expect, test } from 'vitest';
import { guessFromName, nameWords, processIn } from '../../../src/pipeline/new-plate/name-words.ts';

test.each([
  ['Raking_left-02.TIF', ['raking', 'left', '02']],
  ['FQ1911AxialNegative.jpg', ['fq', '1911', 'axial', 'negative']],
  ['été 3.tif', ['été', '3']],
])('takes %j apart into its words', (name, words) => {
  expect(nameWords(name)).toEqual(words);
});

describe('a name says', () => {
  test.each([
    ['normal.tif', 'normal', 'positive'],
    ['raking-left.tif', 'raking', 'positive'],
    ['axial.jpg', 'axial', 'negative'],
    ['Specular_1.jpg', 'axial', 'negative'],
    ['positive.png', 'normal', 'positive'],
    ['plate-neg.tif', 'axial', 'negative'],
    ['axial-positive.tif', 'axial', 'positive'],
    ['raking/IMG_0002.tif', 'raking', 'positive'],
    ['uv365.tif', 'ultraviolet', 'none'],
    ['transmitted.tif', 'transmitted', 'none'],
    ['flatbed_scan.tif', 'scan', 'none'],
    ['DSC_0042.tif', null, null],
    ['portrait-glass-plate-49mp.jpg', null, null],
  ])('%s: set-up %s, reading %s', (name, setup, reading) => {
    expect(guessFromName(name)).toMatchObject({ setup, reading });
  });

  test('that a frame is an aid and not a picture of the plate', () => {
    expect(guessFromName('raking-blank.tif')).toMatchObject({ aid: 'blank', setup: 'raking' });
    expect(guessFromName('ColorChecker.tif').aid).toBe('target');
    expect(guessFromName('normal.tif').aid).toBeNull();
  });

  test('the process, when it names exactly one', () => {
    expect(processIn(['portrait-daguerreotype-1856.jpg'])).toBe('daguerreotype');
    expect(processIn(['our-tintypes'])).toBe('tintype');
    expect(processIn(['a-daguerreotype.jpg', 'portrait-glass-plate.jpg'])).toBeNull();
    expect(processIn(['harbour'])).toBeNull();
  });
});
