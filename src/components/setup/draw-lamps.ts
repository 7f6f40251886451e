/** The lamps of a set-up from the side: where they stand, their rays and their heights. */
import { lengthWords, type DrawingSpeech } from './drawing-speech.ts';
import type { drawnPlaces, SetupScene } from './scene.ts';
import { across, arc, label, line, type Sheet } from './svg.ts';

type Places = ReturnType<typeof drawnPlaces>;

export const radians = (degrees: number) => (degrees * Math.PI) / 180;
/** From here on lamps are drawn without rays and words. */
const many = 5;

/**
 * @param plane Bearing of the drawing's plane, degrees.
 * @param size Of its letters.
 */
export function drawLamps(
  scene: SetupScene,
  sheet: Sheet,
  places: Places,
  plane: number,
  size: number,
  speech: DrawingSpeech,
) {
  const { words, measures } = speech;
  const few = scene.lamps.length < many;
  scene.lamps.forEach((lamp, i) => {
    const distance = places.lamp(lamp);
    const side = Math.cos(radians(lamp.bearing - plane)) < -1e-6 ? -1 : 1;
    const at = [
      side * distance * Math.cos(radians(lamp.height)),
      -distance * Math.sin(radians(lamp.height)),
    ] as const;
    const unknown = lamp.distance === null ? ' unknown' : '';
    if (few) {
      line(sheet, `ray${unknown}`, [at, [0, 0]], 'lamp-ray');
      // Scattered up to the lens; mirrored away to the other side.
      const away = 0.45 * Math.min(distance, places.camera);
      line(
        sheet,
        'away',
        [
          [0, 0],
          [(-at[0] / distance) * away, (at[1] / distance) * away],
        ],
        'away-ray',
      );
      if (i === 0)
        line(
          sheet,
          'scattered',
          [
            [0, 0],
            [0, -places.camera],
          ],
          'scattered-ray',
        );
      const radius = 0.3 * distance;
      arc(sheet, 'angle', radius, side > 0 ? 0 : 180, side > 0 ? lamp.height : 180 - lamp.height);
      const middle = radians(lamp.height / 2);
      const out = radius + 1.3 * size;
      // Between a low lamp's ray and the plate there is no room for a word: above the ray.
      const labelPlace: readonly [number, number] =
        lamp.height < 18
          ? [side * radius, -radius * Math.sin(radians(lamp.height)) - 0.8 * size]
          : [side * out * Math.cos(middle), -out * Math.sin(middle) + size / 3];
      label(sheet, labelPlace, measures.degrees(lamp.height), side > 0 ? 'start' : 'end');
      const text =
        words.lampAt(lengthWords(lamp.distance, speech)) +
        (lamp.diffuser ? `, ${words.diffuser}` : '');
      const clear = ((lamp.size ?? 0) / 2) * Math.sin(radians(90 - lamp.height)) + 0.9 * size;
      label(sheet, [at[0], at[1] - clear], text, 'middle', unknown !== '');
    }
    across(sheet, `lamp${unknown}`, at, at, lamp.size ?? size, 'lamp');
  });
}
