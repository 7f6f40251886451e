/** The table's own figures, against the chapter as copied in values seen (FADGI 2016). */
import { describe, expect, test } from 'vitest';
import {
  editionName,
  limit,
  standingOf,
  tolerances,
  tolerancesSchema,
} from '../../src/records/tolerances.ts';
import { hasShared, sharedPath } from '../shared.ts';
import { readFileSync } from 'node:fs';

describe('tolerances', () => {
  test.skipIf(!hasShared('reference', 'values', 'imaging_tolerances.json'))(
    'FADGI 2016 has the figures of the chapter (the check material is beside the project)',
    () => {
      const path = sharedPath('reference', 'values', 'imaging_tolerances.json');
      const seen = (
        JSON.parse(readFileSync(path, 'utf8')) as Record<string, Record<string, unknown>>
      )['fadgi_2016_prints_and_photographs'];
      const { figures } = tolerances.editions['fadgi-2016'];
      const pairs = [
        ['resolution', 'resolution_ppi'],
        ['tone-response', 'tone_response_dL_star_max'],
        ['white-balance', 'white_balance_max'],
        ['evenness', 'illuminance_nonuniformity_max_percent'],
        ['colour-mean', 'colour_mean_dE2000_max'],
        ['sfr10', 'sfr10_sampling_efficiency_min_percent'],
        ['sfr-at-half-sampling', 'sfr_at_half_sampling_frequency_max'],
        ['sfr50', 'sfr50_band_percent_of_half_sampling'],
        ['scale', 'reproduction_scale_accuracy_percent'],
        ['sharpening', 'sharpening_max_mtf'],
        ['noise', 'noise_dL_star_sd_max'],
      ];
      for (const [ours, theirs] of pairs) expect(figures[ours].values).toEqual(seen[theirs]);
    },
  );

  test('says within which figure a value lies, and never that anything complies', () => {
    const even = standingOf(tolerances, 'evenness', 2.4);
    expect(even?.sentence).toBe('within the 3-star figure for evenness (below 3 %)');
    expect(even?.asAimed).toBe(true);
    const uneven = standingOf(tolerances, 'evenness', 8);
    expect(uneven?.sentence).toBe('outside the 1-star figure for evenness (below 8 %)');
    expect(uneven?.asAimed).toBe(false);
    expect(JSON.stringify([tolerances, even, uneven])).not.toMatch(/compl(y|ies|iant)|conform/i);
  });

  test('a band is met only between its ends', () => {
    expect(standingOf(tolerances, 'sfr50', 50)?.level).toBe('4-star');
    expect(standingOf(tolerances, 'sfr50', 70)?.level).toBe('3-star');
    expect(standingOf(tolerances, 'sfr50', 20)?.level).toBeNull();
  });

  test('a table that was not itself seen says so wherever it is named', () => {
    const { editions } = tolerances;
    expect(editionName(editions['fadgi-2016'])).toBe('FADGI 2016, Prints and Photographs');
    expect(editionName(editions['iso-19264-1-2021'])).toBe(
      'ISO 19264-1:2021 (as quoted by others)',
    );
  });

  test('another edition and level can be aimed at', () => {
    const aim = { edition: 'fadgi-2023', level: '4-star' };
    const strict = tolerancesSchema.parse({ ...tolerances, aim });
    expect(standingOf(strict, 'tone-response', 1.6)?.asAimed).toBe(false);
    expect(standingOf(strict, 'evenness', 1)).toBeNull();
  });

  test('every figure has a value for each level, every limit a source', () => {
    for (const { levels, figures } of Object.values(tolerances.editions)) {
      for (const { values } of Object.values(figures)) expect(values).toHaveLength(levels.length);
    }
    for (const name of Object.keys(tolerances.limits)) {
      expect(limit(tolerances, name).source).not.toBe('');
    }
    expect(() => limit(tolerances, 'nothing')).toThrow('There is no limit "nothing"');
  });
});
