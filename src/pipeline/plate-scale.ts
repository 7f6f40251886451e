/**
 * Pixels per millimetre of the plate's frame: as the sitting states it, else as *inspect*
 * measured it, from a scale in the picture or from the plate's edges and its recorded size.
 * Never from the name of a size alone.
 */
import type { InspectedPlate } from './inspect.ts';
import type { PlateRecord } from '../records/plate.ts';
import type { SittingRecord } from '../records/sitting.ts';

export interface PlateScale {
  readonly pixelsPerMillimetre: number | null;
  /** Standard uncertainty, pixels per mm. */
  readonly uncertainty: number | null;
  /** Where the figure comes from, for the reader. */
  readonly from: string;
}

const source = {
  target: 'from a scale in the picture',
  'plate-edges': 'from the edges of the plate',
  stated: 'as stated in the sitting',
} as const;

/** A stated scale without an uncertainty is taken to be good to this share. Common practice, no source. */
const assumedUncertainty = 0.01;

export function plateScale(
  record: PlateRecord,
  sitting: SittingRecord,
  inspected: InspectedPlate['scale'],
): PlateScale {
  const { scale } = sitting;
  if (scale) {
    const { pixelsPerMillimetre, uncertainty } = scale;
    return {
      pixelsPerMillimetre,
      uncertainty: uncertainty ?? pixelsPerMillimetre * assumedUncertainty,
      from: uncertainty ? source[scale.from] : `${source[scale.from]}, uncertainty assumed`,
    };
  }
  if (inspected) {
    const { pixelsPerMillimetre, uncertainty, from } = inspected;
    return { pixelsPerMillimetre, uncertainty, from: `measured ${source[from]}` };
  }
  const measured = Array.isArray(record.size);
  return {
    pixelsPerMillimetre: null,
    uncertainty: null,
    from: measured
      ? 'not known: the size of the plate is recorded, but not where its edges lie in the picture'
      : 'not known',
  };
}
