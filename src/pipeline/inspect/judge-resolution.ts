/** Pixels per millimetre: enough of them, and the ones that the sitting states. */
import { pixelsPerInch, toMillimetres, type Scale } from '../../imaging/inspect/scale.ts';
import { proposalWords, sizeAgreement } from '../../records/plate-sizes.ts';
import { limit, standingOf } from '../../records/tolerances.ts';
import { about, kept, said, type InspectedSitting, type Judge } from './inspected-sitting.ts';
import {
  baseOf,
  bestScale,
  edgesAndSize,
  scaleFromTarget,
  type EdgesAndSize,
} from './plate-size.ts';

export const judgeResolution: Judge = (sitting) => [
  ...judgeScale(sitting),
  ...judgeFineness(sitting),
];

function judgeScale(sitting: InspectedSitting) {
  const edges = edgesAndSize(sitting);
  const stated = sitting.record.scale;
  const target = scaleFromTarget(sitting);
  if (target && stated) {
    const found = judgeStated(
      sitting,
      stated.pixelsPerMillimetre,
      target,
      'the scale in the picture gives',
    );
    if (found.length > 0) return found;
  }
  if (!edges) return [];
  if (edges.millimetres && edges.scale) {
    const [width, height] = edges.millimetres;
    const proportion = (edges.pixels[0] / edges.pixels[1] / (width / height) - 1) * 100;
    const most = limit(sitting.tolerances, 'named-size').value;
    if (Math.abs(proportion) > most) return [sidesDisagree(sitting, edges, proportion)];
    const from = "the plate's edges and its recorded size give";
    return stated ? judgeStated(sitting, stated.pixelsPerMillimetre, edges.scale, from) : [];
  }
  if (edges.name !== null && stated) return judgeName(sitting, edges, edges.name);
  return [];
}

/** Neither scale nor edges can be right when the two sides ask for different scales. */
function sidesDisagree(sitting: InspectedSitting, edges: EdgesAndSize, percent: number) {
  const [across, down] = edges.pixels;
  const [width, height] = edges.millimetres ?? [NaN, NaN];
  return about(sitting, sitting.base, baseOf(sitting)?.measures?.file ?? null, {
    level: 'warning',
    code: 'size-differs',
    message: `The edges found in the picture are ${said(across)} × ${said(down)} px apart, a shape ${said(Math.abs(percent))} % ${percent > 0 ? 'wider' : 'narrower'} than the recorded ${width} × ${height} mm.`,
    remedy:
      'Measure the plate again, as the camera sees it, width first. If a mat covers its edges, the edges found are those of the mat.',
    measured: { value: kept(percent), unit: '%', expected: '0' },
  });
}

function judgeStated(sitting: InspectedSitting, stated: number, measured: Scale, from: string) {
  const { pixelsPerMillimetre, uncertainty } = measured;
  const error = 100 * (stated / pixelsPerMillimetre - 1);
  const doubt = (200 * uncertainty) / pixelsPerMillimetre;
  const standing = standingOf(sitting.tolerances, 'scale', Math.max(0, Math.abs(error) - doubt));
  if (!standing || standing.asAimed) return [];
  const worst = limit(sitting.tolerances, 'scale-error').value;
  return [
    about(sitting, sitting.base, baseOf(sitting)?.measures?.file ?? null, {
      level: Math.abs(error) > worst && !sitting.plate?.housing?.mat ? 'error' : 'warning',
      code: 'wrong-scale',
      message: `The sitting states ${said(stated)} px per mm, but ${from} ${said(pixelsPerMillimetre)} ± ${said(2 * uncertainty)} px per mm: ${said(Math.abs(error))} % ${error > 0 ? 'less' : 'more'}, ${standing.sentence}.`,
      remedy:
        'Measure the scale again from the target, or the plate with a ruler beside it (never on it), and correct sitting.yaml or plate.md.',
      measured: { value: kept(error), unit: '%', expected: standing.expected },
      from: standing.edition,
    }),
  ];
}

function judgeName(sitting: InspectedSitting, edges: EdgesAndSize, name: string) {
  const scale = bestScale(sitting);
  if (!scale) return [];
  const sides = edges.pixels.map(
    (value) => toMillimetres({ value, uncertainty: edges.uncertainty }, scale).value,
  );
  const agreement = sizeAgreement(name, [sides[0], sides[1]]);
  if (!agreement || agreement.agrees) return [];
  return [
    about(sitting, sitting.base, baseOf(sitting)?.measures?.file ?? null, {
      level: 'warning',
      code: 'size-differs',
      message: `By the stated scale the plate measures ${said(sides[0])} × ${said(sides[1])} mm, but its size is recorded as "${name}". Expected about ${proposalWords(agreement.nearest)}.`,
      remedy:
        'Check the scale in sitting.yaml, or record the measured size in millimetres: names of sizes differ between makers.',
      measured: { value: kept(sides[0]), unit: 'mm', expected: proposalWords(agreement.nearest) },
    }),
  ];
}

function judgeFineness(sitting: InspectedSitting) {
  const scale = bestScale(sitting);
  if (!scale) return [];
  const ppi = pixelsPerInch(scale);
  const standing = standingOf(sitting.tolerances, 'resolution', ppi);
  if (!standing || standing.asAimed) return [];
  return [
    about(sitting, sitting.base, baseOf(sitting)?.measures?.file ?? null, {
      level: 'warning',
      code: 'resolution-low',
      message: `The base has ${said(ppi)} pixels per inch of plate (${said(scale.pixelsPerMillimetre)} per mm): ${standing.sentence}.`,
      remedy: 'Move the camera nearer, use a longer lens, or photograph a mosaic of close-ups.',
      measured: { value: kept(ppi), unit: 'ppi', expected: standing.expected },
      from: standing.edition,
    }),
  ];
}
