/**
 * A set-up from the side, in the plane through the lens and the first lamp: plate edge on, lens
 * over it, lamps at their heights, and the rays that reach the lens. Other lamps are turned into
 * the plane, on the side where they stand.
 */
import { drawLamps, radians } from './draw-lamps.ts';
import { drawnPlaces, type SetupScene } from './scene.ts';
import { emptySheet, label, letterSize, line, ruler, svgOf, type Sheet } from './svg.ts';
import { lengthWords, type DrawingSpeech } from './drawing-speech.ts';

/** Length of the plate along a bearing, through its middle. */
export function chordAlong([width, height]: readonly [number, number], bearing: number): number {
  const [s, c] = [Math.abs(Math.sin(radians(bearing))), Math.abs(Math.cos(radians(bearing)))];
  return Math.min(s > 1e-9 ? width / s : Infinity, c > 1e-9 ? height / c : Infinity);
}

export function sectionSvg(scene: SetupScene, what: string, speech: DrawingSpeech): string {
  const { words, measures } = speech;
  const sheet = emptySheet();
  const places = drawnPlaces(scene);
  const plane = scene.panel?.bearing ?? scene.lamps[0]?.bearing ?? 90;
  const half = chordAlong(scene.plate, plane) / 2;
  const size = letterSize(Math.max(0.95 * places.camera, 2.6 * half, places.panel));
  drawMirrorRays(scene, sheet, half, places, size, speech);
  line(
    sheet,
    scene.plateKnown ? 'plate' : 'plate unknown',
    [
      [-half, 0],
      [half, 0],
    ],
    'plate',
  );
  label(
    sheet,
    [-half - size / 2, size / 3],
    scene.plateKnown ? words.plate : words.plateUnknown,
    'end',
  );
  if (scene.behind) {
    line(
      sheet,
      'lamp unknown',
      [
        [-1.2 * half, 0.7 * half],
        [1.2 * half, 0.7 * half],
      ],
      'behind',
    );
    line(sheet, 'ray', [
      [0, 0.7 * half],
      [0, -places.camera],
    ]);
    label(sheet, [0, 0.7 * half + 1.6 * size], words.behind, 'middle', true);
  }
  drawLens(scene, sheet, places.camera, size, speech);
  drawLamps(scene, sheet, places, plane, size, speech);
  if (scene.lampsWithoutPlace > 0) {
    const text = words.lampsWithoutPlace(scene.lampsWithoutPlace);
    label(sheet, [-2 * half, -0.3 * places.camera], text, 'end', true);
  }
  ruler(sheet, measures.millimetres);
  return svgOf(sheet, words.sectionTitle(what));
}

type Places = ReturnType<typeof drawnPlaces>;

function drawLens(
  scene: SetupScene,
  sheet: Sheet,
  camera: number,
  size: number,
  { words }: DrawingSpeech,
): void {
  const unknown = scene.cameraDistance === null ? ' unknown' : '';
  const half = Math.max((scene.opening ?? 0) / 2, 1.1 * size);
  line(
    sheet,
    `lens${unknown}`,
    [
      [-half, -camera],
      [half, -camera],
    ],
    'lens',
  );
  line(sheet, `thin${unknown}`, [
    [-half, -camera],
    [-half, -camera - 2 * size],
    [half, -camera - 2 * size],
    [half, -camera],
  ]);
  const text = scene.cameraDistance === null ? words.lensUnknown : words.lens;
  label(sheet, [half + size / 2, -camera - 0.7 * size], text, 'start', unknown !== '');
}

/** From the plate's edges to the lens, and where the mirror looks along them. */
function drawMirrorRays(
  scene: SetupScene,
  sheet: Sheet,
  half: number,
  places: Places,
  size: number,
  speech: DrawingSpeech,
) {
  const { words } = speech;
  const { camera } = places;
  const unknown = scene.cameraDistance === null ? ' unknown' : '';
  for (const side of [-1, 1]) {
    line(
      sheet,
      `seen${unknown}`,
      [
        [0, -camera],
        [side * half, 0],
      ],
      'lens-ray',
    );
  }
  if (scene.glass) {
    drawGlass(scene, sheet, half, places, size, speech);
    return;
  }
  if (scene.behind) return;
  // A mirror shows what lies as far to the other side: twice its size at the lens's distance.
  const known = scene.surround === null ? ' unknown' : '';
  for (const side of [-1, 1]) {
    line(
      sheet,
      `mirrored${unknown}`,
      [
        [side * half, 0],
        [2 * side * half, -camera],
      ],
      'mirror-ray',
    );
    line(
      sheet,
      `surround ${scene.surround ?? 'none'}${known}`,
      [
        [side * 2 * half, -camera],
        [side * Math.min(1.6 * size, half), -camera],
      ],
      'surround',
    );
  }
  const text = scene.surround === null ? words.surroundUnknown : words.surround[scene.surround];
  label(sheet, [-2 * half - size / 2, -camera + size / 4], text, 'end', known !== '');
}

/** The sheet over the plate, the panel beside it, and the rays from one to the other. */
function drawGlass(
  scene: SetupScene,
  sheet: Sheet,
  half: number,
  places: Places,
  size: number,
  speech: DrawingSpeech,
) {
  const { words } = speech;
  const { camera, glass, panel } = places;
  const angle = radians(scene.glass?.angle ?? 45);
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  /** Where the ray that the mirror sends up from an edge meets the sheet through (0, glass). */
  const hit = (edge: number) => {
    const lean = edge / camera;
    const y = (glass * ux + uy * edge) / (ux - uy * lean);
    return [edge + lean * y, y] as const;
  };
  const out = panel - glass;
  const unknown = scene.panel?.distance === null ? ' unknown' : '';
  for (const edge of [-half, half]) {
    const [x, y] = hit(edge);
    const lean = edge / camera;
    // Reflected by the sheet: d' = 2 (d.u) u - d.
    const along = 2 * (lean * ux + uy);
    const [dx, dy] = [along * ux - lean, along * uy - 1];
    const end = [out, -(y + ((out - x) * dy) / dx)] as const;
    line(sheet, `mirrored${unknown}`, [[edge, 0], [x, -y], end], 'mirror-ray');
  }
  const ends = [hit(-half), hit(half)].map(
    ([x, y]) => [1.25 * x, -(glass + 1.25 * (y - glass))] as const,
  );
  line(sheet, `glass${scene.glass?.angle === null ? ' unknown' : ''}`, ends, 'glass');
  const width = scene.panel?.size ?? 2.6 * half;
  const faint = scene.panel?.size === null ? ' unknown' : unknown;
  line(
    sheet,
    `lamp${faint}`,
    [
      [out, -(glass - width / 2)],
      [out, -(glass + width / 2)],
    ],
    'panel',
  );
  const thickness = scene.glass?.thickness ?? null;
  label(
    sheet,
    [out + size, -glass],
    words.panel(lengthWords(scene.panel?.distance ?? null, speech)),
    'start',
    unknown !== '',
  );
  label(
    sheet,
    [ends[0][0] - size, -glass - 0.7 * size],
    words.glass(lengthWords(thickness, speech)),
    'end',
    thickness === null,
  );
  label(
    sheet,
    [ends[0][0] - size, -glass + 0.7 * size],
    scene.planned ? words.glassFree : words.glassHeight,
    'end',
    true,
  );
}
