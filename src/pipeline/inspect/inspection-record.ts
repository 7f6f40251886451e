/** What was measured of one capture, as the pages and the terminal show it. */
import { pixelsPerInch, toMillimetres } from '../../imaging/inspect/scale.ts';
import type { GridMap, Inspection } from '../../records/inspection.ts';
import { editionName, standingOf } from '../../records/tolerances.ts';
import { kept, said, type InspectedCapture, type InspectedSitting } from './inspected-sitting.ts';
import type { Measures } from './measures.ts';
import { bestScale, edgesAndSize } from './plate-size.ts';

type Measurement = Inspection['measurements'][number];

export function inspectionOf(
  sitting: InspectedSitting,
  { record, measures }: InspectedCapture,
): Inspection | null {
  if (!measures) return null;
  const say = (
    quantity: string,
    label: string,
    value: number,
    unit: string,
    more: { readonly uncertainty?: number; readonly from?: string } = {},
  ): Measurement => {
    const standing = standingOf(sitting.tolerances, quantity, value);
    return {
      quantity,
      label,
      value: kept(value),
      uncertainty: more.uncertainty === undefined ? null : kept(more.uncertainty),
      unit,
      standing: standing?.sentence ?? null,
      edition: standing ? editionName(standing.edition) : null,
      from: more.from ?? null,
    };
  };
  const { clipping, blur } = measures;
  const measurements = [
    ...(record.id === sitting.base ? scaleMeasurements(sitting, say) : []),
    say('clipped-image', 'Clipped on the image', 100 * clipping.imageShare, '%', {
      from: measures.outline.ok ? 'inside the plate’s edges' : 'the whole picture',
    }),
    ...(measures.outline.ok
      ? [say('clipped-edge', 'Clipped along the plate’s edge', 100 * clipping.edgeShare, '%')]
      : []),
    ...(blur.ok
      ? [
          say('edge-blur', 'Blur of the sharpest edges', blur.value.sigma, 'px', {
            from: `${blur.value.edges} edges, with those of scratches and dust`,
          }),
        ]
      : []),
    ...softnessMeasurements(sitting, record.id, say),
    ...evennessMeasurements(sitting, record.id, measures, say),
    ...edgeMeasurements(measures, say),
    ...colourMeasurements(measures, say),
  ];
  return {
    measurements,
    maps: mapsOf(measures),
    outline: measures.outline.ok
      ? measures.outline.value.corners.map(([x, y]): [number, number] => [
          kept((x + 0.5) / measures.width),
          kept((y + 0.5) / measures.height),
        ])
      : null,
    flatField: measures.blank?.ok
      ? {
          file: measures.blank.value.file,
          degree: measures.blank.value.degree,
          coefficients: measures.blank.value.coefficients,
          middle: measures.blank.value.middle,
        }
      : null,
  };
}

type Say = (
  quantity: string,
  label: string,
  value: number,
  unit: string,
  more?: { readonly uncertainty?: number; readonly from?: string },
) => Measurement;

function scaleMeasurements(sitting: InspectedSitting, say: Say): Measurement[] {
  const scale = bestScale(sitting);
  if (!scale) return [];
  const from = {
    stated: 'the stated scale',
    target: 'the scale in the picture',
    'plate-edges': 'the plate’s edges and its recorded size',
  }[scale.from];
  const edges = edgesAndSize(sitting);
  const inches = scale.uncertainty * (pixelsPerInch(scale) / scale.pixelsPerMillimetre);
  const sides = edges?.pixels.map((value) =>
    toMillimetres({ value, uncertainty: edges.uncertainty }, scale),
  );
  return [
    say('resolution', 'Pixels per inch of plate', pixelsPerInch(scale), 'ppi', {
      uncertainty: inches,
      from,
    }),
    ...(sides && scale.from !== 'plate-edges'
      ? [
          say('plate-width', 'Width between the plate’s edges', sides[0].value, 'mm', {
            uncertainty: sides[0].uncertainty,
            from: 'edges found in the picture',
          }),
          say('plate-height', 'Height between the plate’s edges', sides[1].value, 'mm', {
            uncertainty: sides[1].uncertainty,
            from: 'edges found in the picture',
          }),
        ]
      : []),
  ];
}

function softnessMeasurements(
  { softness, base }: InspectedSitting,
  id: string,
  say: Say,
): Measurement[] {
  const found = softness.get(id);
  if (!found?.ok) return [];
  const { extra, edges } = found.value;
  return [
    say('extra-blur', `Blur beyond that of "${base}"`, extra, 'px', {
      from: `${edges} edges that both show`,
    }),
  ];
}

function evennessMeasurements(
  { background }: InspectedSitting,
  id: string,
  { blank }: Measures,
  say: Say,
): Measurement[] {
  if (blank?.ok) {
    return [
      say('evenness', 'Unevenness of the light', blank.value.spreadPercent, '%', {
        from: `blank field ${blank.value.file}: 5th to 95th percentile over the median`,
      }),
    ];
  }
  if (!background?.light.ok) return [];
  const { positive, negative } = background.light.value;
  const [light, other] =
    id === background.positive
      ? [positive, background.negative]
      : id === background.negative
        ? [negative, background.positive]
        : [null, ''];
  if (!light) return [];
  return [
    say('own-background', 'Fall-off of the light over the plate', light.percent, '%', {
      from: `the plate itself, against "${other}"; no blank field`,
    }),
  ];
}

function edgeMeasurements({ edge }: Measures, say: Say): Measurement[] {
  if (!edge?.ok) return [];
  const { mtf50, mtf10, atHalfSampling, maximum } = edge.value;
  const unit = '% of half sampling';
  return [
    ...(mtf50 === null
      ? []
      : [say('sfr50', 'Frequency with half the modulation', 200 * mtf50, unit)]),
    ...(mtf10 === null ? [] : [say('sfr10', 'Frequency with a tenth of it', 200 * mtf10, unit)]),
    say('sfr-at-half-sampling', 'Modulation at half sampling', atHalfSampling, ''),
    say('sharpening', 'Largest modulation', maximum, ''),
  ];
}

function colourMeasurements({ colour }: Measures, say: Say): Measurement[] {
  if (!colour?.ok) return [];
  const { mean, max, tone, whiteBalance, noise, edition } = colour.value;
  const from =
    edition === 'from-2014-11' ? 'target from November 2014' : 'target before November 2014';
  return [
    say('colour-mean', 'Colour, mean of 24 patches', mean, 'ΔE2000', { from }),
    say('colour-max', 'Colour, largest of 24 patches', max, 'ΔE2000', { from }),
    say('tone-response', 'Tone, largest of the greys', tone, 'ΔL*', { from }),
    say('white-balance', 'Grey balance, largest of the greys', whiteBalance, 'ΔE(a*b*)', { from }),
    say('noise', 'Noise, largest of the greys', noise, 'L* standard deviation', { from }),
  ];
}

function mapsOf({ clipping, blank }: Measures): GridMap[] {
  const maps: GridMap[] = [];
  // A map of nothing tells nothing.
  if (clipping.map.values.some((v) => v > 0)) {
    maps.push({
      kind: 'clipping',
      columns: clipping.map.columns,
      rows: clipping.map.rows,
      values: clipping.map.values.map((v) => kept(100 * v)),
      unit: '%',
      caption: 'Clipped part of each field, on an overview of the picture.',
      marks: [],
    });
  }
  if (blank?.ok) {
    const { map, file, hotSpots } = blank.value;
    maps.push({
      kind: 'evenness',
      columns: map.columns,
      rows: map.rows,
      values: map.values.map((v) => kept(100 * v)),
      unit: '% of the median',
      caption: `The light on the blank field ${file}, without its hot spots.`,
      marks: hotSpots.map(({ across, down, excessPercent }) => ({
        across: kept(across),
        down: kept(down),
        label: `+${said(excessPercent)} %`,
      })),
    });
  }
  return maps;
}
