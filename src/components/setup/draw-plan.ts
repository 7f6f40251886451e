/** A set-up from above: the plate with its top edge up, lamps and panel where they stand. */
import { drawnPlaces, type SetupScene } from './scene.ts';
import { across, arc, box, emptySheet, label, letterSize, line, ruler, svgOf } from './svg.ts';
import { lengthWords, type DrawingSpeech } from './drawing-speech.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;
/** From this many lamps on they are dots without rays. */
const many = 5;

export function planSvg(scene: SetupScene, what: string, speech: DrawingSpeech): string {
  const { words, measures } = speech;
  const sheet = emptySheet();
  const places = drawnPlaces(scene);
  const [width, height] = scene.plate;
  box(sheet, scene.plateKnown ? 'plate' : 'plate unknown', [0, 0], width, height, 'plate');
  const far = scene.lamps.map((lamp) => places.lamp(lamp) * Math.cos(radians(lamp.height)));
  const extent = Math.max(width, height, ...far.map((d) => 1.7 * d), places.panel);
  const size = letterSize(extent);
  line(sheet, 'thin', [
    [-0.15 * width, -height / 2 + size / 2],
    [0.15 * width, -height / 2 + size / 2],
  ]);
  label(sheet, [0, height / 2 + 1.2 * size], scene.plateKnown ? words.plate : words.plateUnknown);
  scene.lamps.forEach((lamp, i) => {
    const [dx, dy] = [Math.sin(radians(lamp.bearing)), -Math.cos(radians(lamp.bearing))];
    const at = [far[i] * dx, far[i] * dy] as const;
    const unknown = lamp.distance === null ? ' unknown' : '';
    if (scene.lamps.length < many) {
      line(sheet, `ray${unknown}`, [at, [0, 0]], 'lamp-ray');
      if (lamp.bearing !== 0 && lamp.bearing !== 360) {
        const radius = Math.max(
          0.32 * far[i],
          Math.min(0.9 * far[i], 0.62 * Math.hypot(width, height)),
        );
        arc(sheet, 'angle', radius, 90, 90 - lamp.bearing);
        const middle = radians(Math.min(lamp.bearing / 2, 160));
        label(
          sheet,
          [(radius + 1.6 * size) * Math.sin(middle), -(radius + 0.6 * size) * Math.cos(middle)],
          measures.degrees(lamp.bearing),
        );
      }
      const anchor = Math.abs(dx) < 0.3 ? 'middle' : dx > 0 ? 'start' : 'end';
      label(
        sheet,
        [at[0] + 1.4 * size * dx, at[1] + (dy > 0.3 ? 1.8 : -0.6) * size],
        words.lampAt(lengthWords(lamp.distance, speech)),
        anchor,
        lamp.distance === null,
      );
    }
    across(sheet, `lamp${unknown}`, at, [dx, dy], lamp.size ?? size, 'lamp');
  });
  if (scene.lamps.length >= many) {
    label(sheet, [0, sheet.bottom + 1.2 * size], words.lamps(scene.lamps.length));
  }
  if (scene.panel) drawPanel(scene, sheet, size, speech);
  if (scene.lampsWithoutPlace > 0) {
    label(
      sheet,
      [0, sheet.top - size],
      words.lampsWithoutPlace(scene.lampsWithoutPlace),
      'middle',
      true,
    );
  }
  ruler(sheet, measures.millimetres);
  return svgOf(sheet, words.planTitle(what));
}

function drawPanel(
  scene: SetupScene,
  sheet: ReturnType<typeof emptySheet>,
  size: number,
  speech: DrawingSpeech,
): void {
  const { words } = speech;
  const { panel } = scene;
  if (!panel) return;
  const places = drawnPlaces(scene);
  const bearing = panel.bearing ?? 90;
  const [dx, dy] = [Math.sin(radians(bearing)), -Math.cos(radians(bearing))];
  const out = places.panel - places.glass;
  const at = [out * dx, out * dy] as const;
  const unknown = panel.bearing === null || panel.distance === null ? ' unknown' : '';
  line(sheet, `ray${unknown}`, [at, [0, 0]], 'panel-ray');
  across(
    sheet,
    `lamp${unknown}${panel.size === null ? ' unknown' : ''}`,
    at,
    [dx, dy],
    panel.size ?? 1.5 * Math.hypot(...scene.plate),
    'panel',
  );
  const text =
    panel.bearing === null ? words.panelUnknown : words.panel(lengthWords(panel.distance, speech));
  const below = ((panel.size ?? 0) / 2) * Math.abs(dx) + 1.4 * size;
  label(sheet, [at[0], at[1] + below], text, 'middle', unknown !== '');
}
