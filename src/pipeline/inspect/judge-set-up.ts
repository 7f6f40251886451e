/**
 * What was measured against what the sitting says was set up: the ghost of the glass against
 * its thickness, and the lamp's place against what the mirror would show of it.
 */
import { thicknessFromGhost } from '../../optics/axial-glass.ts';
import { sheetGhost } from '../../optics/glass-sheet.ts';
import { excludedFrom, mirrorClearance } from '../../optics/lamp-zone.ts';
import { setupOf, type LampRecord } from '../../records/sitting.ts';
import { about, kept, said, type InspectedCapture, type Judge } from './inspected-sitting.ts';
import { bestScale, plateMillimetres } from './plate-size.ts';

/** Index of window glass, for a sheet whose index is not recorded. */
const usualIndex = 1.52;
/** A sheet sold as 1 mm may be this much off, mm: common practice, no source. */
const thicknessDoubt = 0.2;
/** Of the measured ghost, pixels: twice the largest error on renders, and the capture's scale. */
const measuredDoubt = 1;
/**
 * A step this many times stronger or weaker than the sheet's ghost is something else: the slope
 * of a rim, stray light. Plain glass of index 1.46 to 1.6 at 40 to 50 degrees stays within 1.6;
 * on renders true ghosts came within 1.1, the others 2.7 times too strong or 5 times too weak.
 * A coated sheet has a ghost too faint to be told from stray light, and is not judged.
 */
const strengthDoubt = 2;

export const judgeSetUp: Judge = (sitting) =>
  sitting.captures.flatMap((capture) => [
    ...judgeGhost(sitting, capture),
    ...judgeLamps(sitting, capture),
  ]);

function judgeGhost(
  sitting: Parameters<Judge>[0],
  { record, measures }: InspectedCapture,
): ReturnType<Judge> {
  const ghost = sitting.ghosts.get(record.id);
  const glass = setupOf(sitting.record, record)?.glass;
  const scale = bestScale(sitting)?.pixelsPerMillimetre;
  if (!ghost?.ok || !glass || scale === undefined) return [];
  const { index = usualIndex, angle = 45, thickness } = glass;
  const { pixels, strength } = ghost.value;
  const plain = sheetGhost(index, angle, 1);
  if (strength > plain.strength * strengthDoubt || strength < plain.strength / strengthDoubt) {
    return [];
  }
  const fitting = said(thicknessFromGhost(pixels / scale, index, angle));
  const file = measures?.file ?? null;
  const found = `The ghost of the glass, measured at ${said(pixels)} px beside the plate's edge, matches a ${fitting} mm sheet`;
  if (thickness === undefined) {
    return [
      about(sitting, record.id, file, {
        level: 'note',
        code: 'glass-not-recorded',
        message: `${found} of index ${index} at ${said(angle)}°; the sitting does not say how thick it is.`,
        remedy: 'Measure the sheet and write "thickness" beside its index.',
        measured: { value: kept(pixels), unit: 'px', expected: 'a recorded thickness' },
      }),
    ];
  }
  const perMillimetre = plain.displacement * scale;
  const expected = thickness * perMillimetre;
  const doubt = measuredDoubt + thicknessDoubt * perMillimetre;
  if (Math.abs(pixels - expected) <= doubt) return [];
  return [
    about(sitting, record.id, file, {
      level: 'warning',
      code: 'ghost-differs',
      message: `${found}; the sitting says ${said(thickness)} mm, whose ghost would lie at ${said(expected)} px.`,
      remedy:
        'Measure the sheet that was used and correct "glass" in sitting.yaml; or the scale, if that is wrong.',
      measured: {
        value: kept(pixels),
        unit: 'px',
        expected: `${said(expected)} ± ${said(doubt)}`,
      },
    }),
  ];
}

/** Less of the picture clipped than this, and no lamp is in the mirror. */
const noLamp = 1e-5;

function judgeLamps(
  sitting: Parameters<Judge>[0],
  { record, measures, setupKind }: InspectedCapture,
): ReturnType<Judge> {
  const setup = setupOf(sitting.record, record);
  const { distance: cameraDistance } = sitting.record.camera;
  const plate = plateMillimetres(sitting);
  const placed = setupKind === 'normal' || setupKind === 'raking';
  if (!setup || !measures || !cameraDistance || !plate || !placed || record.kind !== 'single') {
    return [];
  }
  return setup.lamps.flatMap((lamp) => {
    const place = placeOf(lamp);
    const stand = { plate, cameraDistance };
    if (!place || mirrorClearance(place, stand) > 0) return [];
    const clipped = measures.clipping.imageShare;
    const limit = said(excludedFrom(place, stand, 0));
    const where = `By the sitting a lamp stands ${said(place.height)}° above the plate at bearing ${said(place.bearing)}°, where the mirror shows it to the lens (from ${limit}° upwards)`;
    const seen = clipped > noLamp;
    return [
      about(sitting, record.id, measures.file, {
        level: 'warning',
        code: 'lamp-in-mirror',
        message: seen
          ? `${where}; ${said(100 * clipped)} % of the plate is clipped.`
          : `${where}, but nothing on the plate is clipped.`,
        remedy: seen
          ? `Put the lamp below ${limit}° and photograph again.`
          : 'Check the recorded height: it counts from the plate upwards, not from the lens down.',
        measured: { value: kept(100 * clipped), unit: '%', expected: seen ? '0' : '> 0' },
      }),
    ];
  });
}

function placeOf({ bearing, height, distance, size = 0, diffuser }: LampRecord) {
  if (bearing === undefined || height === undefined || distance === undefined) return null;
  return { bearing, height, distance, size: typeof diffuser === 'number' ? diffuser : size };
}
