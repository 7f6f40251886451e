import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  plateSizeNames,
  proposalWords,
  proposeSize,
  sizeAgreement,
  sizeProposals,
} from '../../src/records/plate-sizes.ts';
import { hasShared, sharedPath } from '../shared.ts';

describe('a name proposes', () => {
  // The millimetres and centimetres that the sources print beside their inches.
  test.each([
    ['whole', [165, 216], 'State Library of NSW, "Sizing up the collection" (mm)', 1],
    ['quarter', [83, 108], 'State Library of NSW, "Sizing up the collection" (mm)', 1],
    ['half', [110, 140], 'cwfp.biz, "19th Century Photographic Plate Sizes" (whole cm)', 5],
    ['sixth', [70, 80], 'cwfp.biz, "19th Century Photographic Plate Sizes" (whole cm)', 5],
    ['ninth', [50, 60], 'cwfp.biz, "19th Century Photographic Plate Sizes" (whole cm)', 5],
    ['sixteenth', [35, 40], 'cwfp.biz, "19th Century Photographic Plate Sizes" (half cm)', 2.5],
  ])('for %s the %j that %s prints, as closely as it prints', (name, printed, _, within) => {
    const size = proposeSize(name)!;
    expect(Math.abs(size.shorter - printed[0])).toBeLessThanOrEqual(within);
    expect(Math.abs(size.longer - printed[1])).toBeLessThanOrEqual(within);
  });

  test('a size that its fraction of a whole plate would not give', () => {
    // Areas by the inches of cwfp.biz: half 0.423, sixth 0.162, ninth 0.090, sixteenth 0.040.
    const area = (name: string) => proposeSize(name)!.shorter * proposeSize(name)!.longer;
    const share = (name: string) => area(name) / area('whole');
    expect(share('half')).toBeCloseTo(0.423, 2);
    expect(share('sixth')).toBeCloseTo(0.162, 2);
    expect(share('ninth')).toBeCloseTo(0.09, 2);
    expect(share('sixteenth')).toBeCloseTo(0.04, 2);
  });

  test('with its edition and source', () => {
    expect(proposalWords(proposeSize('Sixth plate')!)).toBe(
      'sixth plate, 69.9 × 82.6 mm (US size, cwfp.biz "19th Century Photographic Plate Sizes")',
    );
    expect(sizeProposals('full')[3]).toMatchObject({ edition: 'French', standing: 'from memory' });
  });

  test('the same under each way of writing it', () => {
    const names = ['sixth', 'Sixth plate', 'sixth-plate', '1/6 plate', '1/6'];
    expect(new Set(names.map((name) => proposeSize(name)?.name))).toEqual(new Set(['sixth']));
  });

  test('nothing when no source has it', () => {
    expect(proposeSize('seventh')).toBeNull();
    expect(sizeAgreement('seventh', [70, 83])).toBeNull();
  });

  test.skipIf(!hasShared('reference', 'values'))('every seen figure of the reference table', () => {
    const path = sharedPath('reference', 'values', 'plate_sizes.json');
    const table = JSON.parse(readFileSync(path, 'utf8')) as {
      plates: { name: string; us: { mm_from_inches: [number, number]; flag: string }[] }[];
    };
    const checked = table.plates.flatMap(({ name, us }) =>
      us.map(({ mm_from_inches: [shorter, longer] }) => {
        const ours = sizeProposals(name.replace(' (full)', ''));
        const near = (p: { shorter: number; longer: number }) =>
          Math.abs(p.shorter - shorter) < 0.06 && Math.abs(p.longer - longer) < 0.06;
        return ours.some(near);
      }),
    );
    expect(checked.length).toBeGreaterThan(15);
    expect(checked.every(Boolean)).toBe(true);
  });
});

describe('a measured size', () => {
  test('agrees with its name within 5 mm or 8 % of any source, whichever way it is turned', () => {
    expect(sizeAgreement('quarter', [108, 81])).toMatchObject({ agrees: true });
    expect(sizeAgreement('half', [108, 162])).toMatchObject({
      agrees: true,
      with: { edition: 'French' },
    });
    expect(sizeAgreement('sixth', [74.8, 83])).toMatchObject({ agrees: true });
  });

  test('does not agree with the name of another size, and the nearest figure is named', () => {
    expect(sizeAgreement('sixth', [83, 108])).toMatchObject({
      agrees: false,
      nearest: { name: 'sixth', longer: 82.6 },
    });
    expect(sizeAgreement('quarter', [70, 83])).toMatchObject({ agrees: false });
  });

  test('as proposed agrees with its own name and not with that of a whole plate', () => {
    for (const name of plateSizeNames.filter((n) => n !== 'double whole')) {
      const { shorter, longer } = proposeSize(name)!;
      const agreeing = plateSizeNames.filter(
        (other) => sizeAgreement(other, [shorter, longer])!.agrees,
      );
      expect(agreeing).toContain(name);
      expect(agreeing).not.toContain(name === 'whole' ? 'half' : 'whole');
    }
  });
});
