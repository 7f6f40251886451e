/** Sharpness: against the others of the sitting, and against a table where a slanted edge was photographed. */
import { limit, standingOf } from '../../records/tolerances.ts';
import {
  about,
  kept,
  said,
  type InspectedCapture,
  type InspectedSitting,
  type Judge,
} from './inspected-sitting.ts';

export const judgeSharpness: Judge = (sitting) => [
  ...judgeRelative(sitting),
  ...sitting.captures.flatMap((capture) => judgeEdge(sitting, capture)),
];

/** Who is softest against whom: where the base itself is the soft one, the others say so. */
function judgeRelative(sitting: InspectedSitting) {
  const compared = [...sitting.softness].flatMap(([id, found]) =>
    found.ok ? [{ id, extra: found.value.extra, edges: found.value.edges }] : [],
  );
  if (compared.length === 0) return [];
  const all = [{ id: sitting.base, extra: 0, edges: 0 }, ...compared];
  const sharpest = all.reduce((a, b) => (b.extra < a.extra ? b : a));
  const most = limit(sitting.tolerances, 'soft-extra-blur');
  return all.flatMap(({ id, extra, edges }) => {
    const softer = extra - sharpest.extra;
    if (softer <= most.value) return [];
    const file = sitting.captures.find((c) => c.record.id === id)?.measures?.file ?? null;
    const count = edges > 0 ? edges : sharpest.edges;
    return [
      about(sitting, id, file, {
        level: 'warning',
        code: 'soft',
        message: `It is softer than "${sharpest.id}": ${count} edges that both show are blurred by ${said(softer)} px more. Expected at most ${most.value} px more.`,
        remedy:
          'Focus on the image side under magnification, check that nothing moved during the exposure, and photograph it again.',
        measured: { value: kept(softer), unit: most.unit, expected: `≤ ${most.value}` },
      }),
    ];
  });
}

function judgeEdge(sitting: InspectedSitting, { record, measures }: InspectedCapture) {
  const edge = measures?.edge;
  if (!edge) return [];
  const file = record.target?.file ?? measures.file;
  if (!edge.ok) {
    return [
      about(sitting, record.id, file, {
        level: 'warning',
        code: 'target-not-measured',
        message: `The slanted edge could not be measured: ${edge.reason}.`,
        remedy:
          'Give the corners of an area that one straight edge crosses at 3 to 10 degrees, at least 60 pixels on each side.',
      }),
    ];
  }
  const { mtf50, mtf10, maximum } = edge.value;
  const checks = [
    { quantity: 'sfr50', value: mtf50 === null ? null : 200 * mtf50, what: 'MTF50 lies at' },
    { quantity: 'sfr10', value: mtf10 === null ? null : 200 * mtf10, what: 'MTF10 lies at' },
    { quantity: 'sharpening', value: maximum, what: 'The modulation reaches' },
  ];
  return checks.flatMap(({ quantity, value, what }) => {
    const standing = value === null ? null : standingOf(sitting.tolerances, quantity, value);
    if (value === null || !standing || standing.asAimed) return [];
    const sharpened = quantity === 'sharpening' || (quantity === 'sfr50' && value > 50);
    return [
      about(sitting, record.id, file, {
        level: 'warning',
        code: sharpened ? 'sharpened' : 'soft',
        message: `${what} ${said(value)} ${standing.figure.unit}: ${standing.sentence}.`,
        remedy: sharpened
          ? 'Switch sharpening off where the raw file is developed.'
          : 'Check focus, aperture and vibration.',
        measured: {
          value: kept(value),
          unit: standing.figure.unit,
          expected: standing.expected,
        },
        from: standing.edition,
      }),
    ];
  });
}
