import { spawnSync } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mixCodes, mixStills } from '../../src/raster/mix-stills.ts';

describe('mixed codes', () => {
  // python3 -c "import numpy as np
  // d=lambda c: np.where(c/255<=.04045, c/255/12.92, ((c/255+.055)/1.055)**2.4)
  // e=lambda l: 255*np.where(l<=.0031308, 12.92*l, 1.055*l**(1/2.4)-.055)
  // p=np.array([0,255,64,200,10.]); n=np.array([255,0,180,40,10.])
  // [print(b, np.round(e((d(p)+b*d(n))/(1+b))).astype(int)) for b in (.03,1,6)]"  NumPy 2.4.6
  test.each([
    [0.03, [48, 252, 71, 197, 10]],
    [1, [188, 188, 138, 149, 10]],
    [6, [238, 106, 169, 89, 10]],
  ])('agree with NumPy at b = %d', (b, expected) => {
    const [p, n] = [
      [0, 255, 64, 200, 10],
      [255, 0, 180, 40, 10],
    ].map((codes) => Uint8Array.from(codes));
    expect([...mixCodes(p, n, b)]).toEqual(expected);
  });

  test('are not a cross-fade of codes', () => {
    const [black, white] = [Uint8Array.of(0), Uint8Array.of(255)];
    // A cross-fade gives 128; half the light of white is code 188 (IEC 61966-2-1).
    expect([...mixCodes(black, white, 1)]).toEqual([188]);
  });
});

describe('stills', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-stills-'));
    const plain = (grey: number, name: string) =>
      sharp({
        create: { width: 300, height: 200, channels: 3, background: { r: grey, g: grey, b: grey } },
      })
        .png()
        .toFile(join(folder, name));
    await plain(40, 'p.png');
    await plain(220, 'n.png');
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  test('have the size asked for, the mixed light, and the words of the packet', async () => {
    const packet =
      '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:source>mine</dc:source></rdf:Description></rdf:RDF></x:xmpmeta>';
    const made = await mixStills({
      positive: join(folder, 'p.png'),
      negative: join(folder, 'n.png'),
      ...{ side: 150, mixes: [0, 1], folder, packets: [packet, packet] },
    });
    expect([made.width, made.height]).toEqual([150, 100]);
    // Code 40 is 0.0212 of white, 220 is 0.7157 (IEC 61966-2-1).
    expect(made.positive.data[7]).toBeCloseTo(0.0212, 4);
    expect(made.negative.data[7]).toBeCloseTo(0.7157, 4);
    const middle = async (n: number) => {
      const { data } = await sharp(join(folder, `${n}.webp`))
        .raw()
        .toBuffer({ resolveWithObject: true });
      return data[3 * 150 * 50 + 225];
    };
    // Half of 0.7369 is 0.3685, code 163.4; WebP is lossy, a plain field by no more than 2 codes.
    expect(Math.abs((await middle(0)) - 40)).toBeLessThanOrEqual(2);
    expect(Math.abs((await middle(1)) - 163)).toBeLessThanOrEqual(2);
    expect((await readFile(join(folder, '1.webp'))).includes('<dc:source>mine')).toBe(true);
    const info = spawnSync('webpinfo', [join(folder, '1.webp')], { encoding: 'utf8' });
    if (info.status === 0) expect(info.stdout).toMatch(/No error detected/);
  });
});
