/** Colour, tone, grey balance and noise, where a 24-patch target was photographed. */
import { limit, standingOf } from '../../records/tolerances.ts';
import type { Measures } from './measures.ts';
import {
  about,
  kept,
  said,
  type InspectedCapture,
  type InspectedSitting,
  type Judge,
} from './inspected-sitting.ts';

type Colour = Extract<NonNullable<Measures['colour']>, { ok: true }>['value'];

const editionWords = {
  'from-2014-11': 'the target made from November 2014',
  'before-2014-11': 'the target made before November 2014',
} as const;

export const judgeColour: Judge = (sitting) =>
  sitting.captures.flatMap((capture) => judgeTarget(sitting, capture));

function judgeTarget(sitting: InspectedSitting, { record, measures }: InspectedCapture) {
  const colour = measures?.colour;
  if (!colour) return [];
  const file = record.target?.file ?? measures.file;
  if (!colour.ok) {
    return [
      about(sitting, record.id, file, {
        level: 'warning',
        code: 'target-not-measured',
        message: `The colour target could not be measured: ${colour.reason}.`,
        remedy: 'Give its four corners in pixels, clockwise from the corner at "dark skin".',
      }),
    ];
  }
  const { mean, bestOrder } = colour.value;
  if (bestOrder.mean < limit(sitting.tolerances, 'patch-order').value * mean) {
    return [
      about(sitting, record.id, file, {
        level: 'warning',
        code: 'target-corners-order',
        message: `The colour target fits far better ${bestOrder.order} (mean CIEDE2000 ${said(bestOrder.mean)} instead of ${said(mean)}).`,
        remedy:
          'Give the corners clockwise from the corner at "dark skin"; if the file is mirrored, photograph or export it again.',
      }),
    ];
  }
  return [
    ...judgeEdition(sitting, record, file, colour.value),
    ...judgeFigures(sitting, record.id, file, colour.value),
  ];
}

/** Two editions of the target exist; nobody can tell them apart from the picture. */
function judgeEdition(
  sitting: InspectedSitting,
  record: InspectedCapture['record'],
  file: string,
  { edition, mean, otherEdition }: Colour,
) {
  if (record.target?.edition !== undefined) return [];
  return [
    about(sitting, record.id, file, {
      level: 'note',
      code: 'target-edition-unknown',
      message: `The sitting does not say when the colour target was made; ${editionWords[edition]} was assumed (mean CIEDE2000 ${said(mean)}; against the other edition ${said(otherEdition)}).`,
      remedy:
        'Write edition: from-2014-11 or before-2014-11 under the target; the date is printed on its back.',
    }),
  ];
}

function judgeFigures(sitting: InspectedSitting, id: string, file: string, colour: Colour) {
  const against = editionWords[colour.edition];
  const checks = [
    {
      quantity: 'colour-mean',
      code: 'colour-off',
      value: colour.mean,
      message: `Mean CIEDE2000 of the 24 patches against ${against} is ${said(colour.mean)}, largest ${said(colour.max)} at patch ${colour.worstPatch}`,
      remedy: 'Develop with a profile made for this camera and lamp.',
    },
    {
      quantity: 'tone-response',
      code: 'tone-off',
      value: colour.tone,
      message: `The grey patches are off by up to ${said(colour.tone)} in L*`,
      remedy: 'Develop without a tone curve of the program’s own, and check the exposure.',
    },
    {
      quantity: 'white-balance',
      code: 'white-balance-off',
      value: colour.whiteBalance,
      message: `The grey patches are up to ${said(colour.whiteBalance)} away from grey in a*b*`,
      remedy: 'Set the white balance from a grey patch, under one kind of lamp only.',
    },
    {
      quantity: 'noise',
      code: 'noisy',
      value: colour.noise,
      message: `L* varies within a grey patch by ${said(colour.noise)} (standard deviation)`,
      remedy: 'Use the lowest ISO, give more light or average several exposures.',
    },
  ];
  return checks.flatMap(({ quantity, code, value, message, remedy }) => {
    const standing = standingOf(sitting.tolerances, quantity, value);
    if (!standing || standing.asAimed) return [];
    return [
      about(sitting, id, file, {
        level: 'warning',
        code,
        message: `${message}: ${standing.sentence}.`,
        remedy,
        measured: { value: kept(value), unit: standing.figure.unit, expected: standing.expected },
        from: standing.edition,
      }),
    ];
  });
}
