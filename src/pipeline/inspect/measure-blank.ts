/** A blank field: the light alone, without a picture in its way. */
import { findHotSpots, measureEvenness } from '../../imaging/inspect/evenness.ts';
import { fitFlatField, flatFieldGrid } from '../../imaging/inspect/flat-field.ts';
import type { OpenOptions } from '../../raster/capture-rows.ts';
import { loadLuminance } from '../../raster/load-plane.ts';
import type { Measures } from './measures.ts';
import { clipLevel, overviewSide, type CaptureFiles } from './measure-capture.ts';

export async function measureBlank(
  { blank, pathOf }: CaptureFiles,
  open: OpenOptions,
): Promise<NonNullable<Measures['blank']>> {
  if (!blank) return { ok: false, reason: 'the file could not be read' };
  const plane = await loadLuminance(pathOf(blank.name), { ...open, maxSide: overviewSide });
  const field = fitFlatField(plane, { clip: clipLevel });
  if (!field.ok) return field;
  const { degree, coefficients, middle } = field.value;
  const { spreadPercent, darkestOverBrightest, brightest } = measureEvenness(field.value);
  const map = flatFieldGrid(field.value, 24, 18);
  return {
    ok: true,
    value: {
      file: blank.name,
      degree,
      coefficients: [...coefficients],
      middle,
      spreadPercent,
      darkestOverBrightest,
      brightest: { ...brightest },
      map: { ...map, values: [...map.values] },
      hotSpots: findHotSpots(field.value).map(({ x, y, excessPercent }) => ({
        across: (x + 0.5) / plane.width,
        down: (y + 0.5) / plane.height,
        excessPercent,
      })),
    },
  };
}
