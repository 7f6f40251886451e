/** The planner's input as far as a plate's record and sitting say it. */
import type { PlanInput } from '../../optics/plan/plan-input.ts';
import type { PlateRecord } from '../../records/plate.ts';
import type { SittingRecord } from '../../records/sitting.ts';
import { readContent } from '../content.ts';
import { findPlaces } from '../places.ts';
import { WrongUse } from '../wrong-use.ts';

export interface SittingInput {
  readonly input: Partial<PlanInput>;
  readonly notes: readonly string[];
}

/** @param from `<plate>` or `<plate>/<sitting>`. @throws WrongUse where there is none. */
export async function proposedSizes(
  from: string,
  folder: string | undefined,
): Promise<SittingInput> {
  const [slug, id] = from.split('/');
  const { plates } = await readContent(findPlaces({ content: folder }).content);
  const plate = plates.find((one) => one.slug === slug);
  const sitting = plate?.sittings.find((one) => id === undefined || one.id === id);
  if (!plate || !sitting) {
    const there = plates.flatMap((one) => one.sittings.map((s) => `${one.slug}/${s.id}`));
    throw new WrongUse(`There is no sitting "${from}". There are: ${there.join(', ') || 'none'}.`);
  }
  return inputOfSitting(plate.record, sitting.record, `${slug}/${sitting.id}`);
}

export function inputOfSitting(
  plate: PlateRecord | null,
  { camera, scale, setups }: SittingRecord,
  name: string,
): SittingInput {
  const size = Array.isArray(plate?.size) ? plate.size : null;
  const all = Object.values(setups);
  const side = all.find(({ kind }) => kind === 'normal')?.lamps[0];
  const raking = all.find(({ kind }) => kind === 'raking')?.lamps[0];
  const axial = all.find(({ kind }) => kind === 'axial');
  const { focalLength, distance } = camera;
  const m =
    focalLength && distance && distance > focalLength
      ? focalLength / (distance - focalLength)
      : null;
  const found: Partial<Record<keyof PlanInput, number | undefined>> = {
    plateWidth: size?.[0],
    plateHeight: size?.[1],
    focalLength,
    cameraDistance: distance,
    iso: camera.iso,
    // What the stated scale and the magnification make of a pixel.
    pixelPitch: m && scale ? (1000 * m) / scale.pixelsPerMillimetre : undefined,
    lampBearing: side?.bearing,
    lampHeight: side?.height,
    lampDistance: side?.distance,
    lampSize: typeof side?.diffuser === 'number' ? side.diffuser : side?.size,
    rakingDistance: raking?.distance,
    glassIndex: axial?.glass?.index,
    glassThickness: axial?.glass?.thickness,
    panelDistance: axial?.lamps[0]?.distance,
  };
  const input = Object.fromEntries(
    Object.entries(found).filter(([, value]) => value !== undefined),
  ) as Partial<PlanInput>;
  return { input, notes: [`From the sitting ${name}: ${Object.keys(input).length} numbers.`] };
}
