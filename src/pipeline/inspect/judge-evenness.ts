/** How evenly the light lay: from a blank field, or with a wide limit from the plate itself. */
import { limit, standingOf } from '../../records/tolerances.ts';
import {
  about,
  kept,
  said,
  type InspectedCapture,
  type InspectedSitting,
  type Judge,
} from './inspected-sitting.ts';

export const judgeEvenness: Judge = (sitting) => [
  ...sitting.captures.flatMap((capture) => judgeBlank(sitting, capture)),
  ...judgeOwnBackground(sitting),
];

function judgeBlank(sitting: InspectedSitting, { record, measures }: InspectedCapture) {
  const blank = measures?.blank;
  if (!blank || record.blank === undefined) return [];
  if (!blank.ok) {
    return [
      about(sitting, record.id, record.blank, {
        level: 'warning',
        code: 'blank-not-measured',
        message: `The blank field could not be measured: ${blank.reason}.`,
        remedy: 'Photograph a clean white sheet in the plate’s place, exposed below clipping.',
      }),
    ];
  }
  const { spreadPercent, brightest, hotSpots } = blank.value;
  const findings = hotSpots.map((spot) => {
    const place = whereOnPlate(sitting, measures.width, measures.height, spot);
    return about(sitting, record.id, record.blank ?? null, {
      level: 'warning',
      code: 'hot-spot',
      message: `The light has a hot spot ${place}: ${said(spot.excessPercent)} % brighter than the even light around it. Expected at most 8 %.`,
      remedy:
        'Look for a reflection or a bare lamp; put a larger diffuser before it, and photograph the blank field again.',
      measured: { value: kept(spot.excessPercent), unit: '%', expected: '≤ 8' },
    });
  });
  const standing = standingOf(sitting.tolerances, 'evenness', spreadPercent);
  if (!standing || standing.asAimed) return findings;
  return [
    ...findings,
    about(sitting, record.id, record.blank, {
      level: 'warning',
      code: 'uneven',
      message: `The light on the blank field varies by ${said(spreadPercent)} %, brightest ${sideWords(brightest)}: ${standing.sentence}.`,
      remedy:
        'Move the lamp further away or add a second one opposite. The blank field can even the picture out, at the cost of noise in the dark parts.',
      measured: { value: kept(spreadPercent), unit: '%', expected: standing.expected },
      from: standing.edition,
    }),
  ];
}

/** In millimetres from the centre of the picture where the scale is stated, else in shares of it. */
function whereOnPlate(
  { record }: InspectedSitting,
  width: number,
  height: number,
  { across, down }: { readonly across: number; readonly down: number },
): string {
  const scale = record.scale?.pixelsPerMillimetre;
  if (scale === undefined) {
    return `at ${said(100 * across)} % of the picture’s width and ${said(100 * down)} % of its height`;
  }
  const x = ((across - 0.5) * width) / scale;
  const y = ((down - 0.5) * height) / scale;
  const side = `${said(Math.abs(x))} mm ${x < 0 ? 'left' : 'right'} of`;
  return `${side} and ${said(Math.abs(y))} mm ${y < 0 ? 'above' : 'below'} the picture’s centre`;
}

function sideWords({ across, down }: { readonly across: number; readonly down: number }): string {
  const vertical = down < 0.35 ? 'at the top' : down > 0.65 ? 'at the bottom' : '';
  const horizontal = across < 0.35 ? 'left' : across > 0.65 ? 'right' : '';
  return [vertical, horizontal].filter((w) => w !== '').join(' ') || 'in the middle';
}

function judgeOwnBackground(sitting: InspectedSitting) {
  const { background } = sitting;
  if (!background?.light.ok) return [];
  const most = limit(sitting.tolerances, 'own-background');
  const { positive, negative } = background.light.value;
  const lit = [
    { id: background.positive, other: background.negative, light: positive },
    { id: background.negative, other: background.positive, light: negative },
  ];
  return lit.flatMap(({ id, other, light }) => {
    const capture = sitting.captures.find((c) => c.record.id === id);
    // A blank field says it better.
    if (capture?.measures?.blank?.ok || light.percent <= most.value) return [];
    return [
      about(sitting, id, capture?.measures?.file ?? null, {
        level: 'warning',
        code: 'uneven',
        message: `The light falls off by ${said(light.percent)} % over the plate, strongest ${bearingWords(light.bearing)}; measured from the plate itself against "${other}", with a wide limit of ${most.value} %.`,
        remedy:
          'Move the lamp further away or even the field out; a blank field photographed under the same light would tell more exactly.',
        measured: { value: kept(light.percent), unit: most.unit, expected: `≤ ${most.value}` },
      }),
    ];
  });
}

function bearingWords(bearing: number): string {
  const words = ['at the top', 'at the top right', 'on the right', 'at the bottom right'];
  words.push('at the bottom', 'at the bottom left', 'on the left', 'at the top left');
  return words[Math.round(bearing / 45) % 8];
}
