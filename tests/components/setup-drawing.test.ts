/** The drawings measured: a millimetre of the set-up is a unit of the SVG. */
import { describe, expect, test } from 'vitest';
import { chordAlong, sectionSvg } from '../../src/components/setup/draw-section.ts';
import { planSvg } from '../../src/components/setup/draw-plan.ts';
import { sceneOfRecord } from '../../src/components/setup/scene.ts';
import { drawings } from '../../src/words/en/drawings.ts';
import { measuresIn } from '../../src/words/measures.ts';

const speech = { words: drawings, measures: measuresIn('en') };

type Point = readonly [number, number];

/** Points of the parts of a name, in the drawing's units. */
function parts(svg: string, name: string): Point[][] {
  return [...svg.matchAll(new RegExp(`data-part="${name}" d="M([^"]*)"`, 'g'))].map(([, path]) =>
    path.split('L').map((pair) => {
      const [x, y] = pair.split(' ').map(Number);
      return [x, y] as const;
    }),
  );
}

const middle = ([a, b]: Point[]) => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
const length = ([a, b]: Point[]) => Math.hypot(a[0] - b[0], a[1] - b[1]);

const plate = { millimetres: [108, 140] as const, aspect: 108 / 140 };
const camera = { distance: 1309, focalLength: 100, aperture: 8 };
const lamp = { bearing: 315, height: 45, distance: 700, size: 60, diffuser: 120 };

describe('a side lamp', () => {
  const scene = sceneOfRecord({ kind: 'normal', surround: 'dark', lamps: [lamp] }, camera, plate);
  const [plan, section] = [planSvg(scene, 'x', speech), sectionSvg(scene, 'x', speech)];

  test('from above: plate, lamp and its face have their sizes and places', () => {
    expect(plan).toContain('data-part="plate" x="-54" y="-70" width="108" height="140"');
    const [face] = parts(plan, 'lamp');
    // 700 mm away at 45 degrees: 494.97 along the table, up and left in equal parts.
    expect(middle(face)[0]).toBeCloseTo(-350, 0);
    expect(middle(face)[1]).toBeCloseTo(-350, 0);
    expect(length(face)).toBeCloseTo(120, 1);
    // The face is turned to the plate.
    const [a, b] = face;
    expect((b[0] - a[0]) * -350 + (b[1] - a[1]) * -350).toBeCloseTo(0, 0);
  });

  test('from the side: lens, lamp and the plate’s edge stand where they are', () => {
    expect(middle(parts(section, 'lens')[0])).toEqual([0, -1309]);
    const [face] = parts(section, 'lamp');
    expect(Math.hypot(...middle(face))).toBeCloseTo(700, 1);
    expect((Math.atan2(-middle(face)[1], middle(face)[0]) * 180) / Math.PI).toBeCloseTo(45, 1);
    // Along 315 degrees the chord of a 108 x 140 plate is 108 / sin 45.
    expect(length(parts(section, 'plate')[0])).toBeCloseTo(152.74, 1);
    expect(chordAlong([108, 140], 0)).toBe(140);
    expect(chordAlong([108, 140], 90)).toBeCloseTo(108, 9);
  });

  test('the mirror shows twice the plate at the lens’s distance', () => {
    const ends = parts(section, 'mirror-ray').map((ray) => ray[1]);
    expect(ends).toEqual([
      [-152.74, -1309],
      [152.74, -1309],
    ]);
  });

  test('the ruler is as long as it says', () => {
    const [rule] = parts(section, 'ruler');
    const said = Number(/>(\d+)\u202fmm<\/text>/.exec(section)?.[1]);
    expect(said).toBeGreaterThanOrEqual(100);
    expect(rule[2][0] - rule[1][0]).toBe(said);
  });

  test('a lamp on the other side stands on the other side', () => {
    const two = sceneOfRecord(
      { kind: 'normal', lamps: [lamp, { ...lamp, bearing: 135 }] },
      camera,
      plate,
    );
    const [first, second] = parts(sectionSvg(two, 'x', speech), 'lamp').map(middle);
    expect(first[0]).toBeCloseTo(-second[0], 1);
  });
});

describe('axial light', () => {
  const setup = {
    kind: 'axial',
    surround: 'bright',
    glass: { index: 1.52, thickness: 1, angle: 45 },
    lamps: [{ bearing: 90, height: 0, distance: 450, size: 300, diffuser: 300 }],
  } as const;
  const scene = sceneOfRecord({ ...setup, lamps: [...setup.lamps] }, camera, plate);
  const section = sectionSvg(scene, 'x', speech);

  test('the light’s way over the glass is as long as recorded', () => {
    const [panel] = parts(section, 'panel');
    const [x, y] = middle(panel);
    // Up to the sheet over the middle, then aside: both together 450 mm.
    expect(x + -y).toBeCloseTo(450, 1);
    expect(length(panel)).toBeCloseTo(300, 1);
  });

  test('the rays from the plate’s edges meet the panel inside its face', () => {
    const [panel] = parts(section, 'panel');
    const [low, high] = [panel[0][1], panel[1][1]].sort((a, b) => a - b);
    for (const ray of parts(section, 'mirror-ray')) {
      expect(ray).toHaveLength(3);
      expect(ray[2][1]).toBeGreaterThan(low);
      expect(ray[2][1]).toBeLessThan(high);
    }
    // What they span is the plate's width times (D + P)/D: 108 x 1759/1309 = 145.1 mm.
    const [a, b] = parts(section, 'mirror-ray').map((ray) => ray[2][1]);
    expect(Math.abs(a - b)).toBeGreaterThan(140);
    expect(Math.abs(a - b)).toBeLessThan(150);
  });

  test('the height of the glass, which no sitting states, is said to be unknown', () => {
    expect(section).toContain('its height is not recorded');
  });
});

describe('what is not recorded', () => {
  test('is drawn as unknown and said in words', () => {
    const scene = sceneOfRecord(
      { kind: 'normal', lamps: [{ bearing: 315, height: 45 }] },
      {},
      { millimetres: null, aspect: 0.8 },
    );
    const [plan, section] = [planSvg(scene, 'x', speech), sectionSvg(scene, 'x', speech)];
    expect(section).toContain('class="lens unknown"');
    expect(section).toContain('lens: distance not recorded');
    expect(section).toContain('lamp: distance not recorded');
    expect(section).toContain('surround not recorded');
    expect(plan).toContain('class="plate unknown"');
    expect(plan).toContain('plate: size not recorded');
  });

  test('a lamp without a place has none in the drawing', () => {
    const scene = sceneOfRecord({ kind: 'normal', lamps: [{ kind: 'led' }] }, camera, plate);
    expect(parts(planSvg(scene, 'x', speech), 'lamp')).toEqual([]);
    expect(planSvg(scene, 'x', speech)).toContain('lamp: place not recorded');
  });

  test('words of a museum cannot end the drawing', () => {
    const scene = sceneOfRecord({ kind: 'normal', lamps: [lamp] }, camera, plate);
    expect(planSvg(scene, '<script>"&', speech)).toContain(
      'aria-label="The set-up from above, to scale: &lt;script&gt;&quot;&amp;."',
    );
  });
});
