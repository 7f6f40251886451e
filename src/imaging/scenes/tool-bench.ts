/** The shipwright's bench: plane, mallet, vice, shavings; tools in a row on the boards behind. */
import { blend, box, carve, cylinder, rod } from './distance.ts';
import { lattice } from './noise.ts';
import { type SceneMaker } from './scene.ts';
import { block, modelled, type Solid, type Surface } from './solid.ts';
import { boards, iron, wood } from './surfaces.ts';

const steel: Surface = { ...iron(5, 0.3), shine: 0.25, spread: 0.2 };

/** A tool on the wall: handle up, blade down. Long and wide give its size. */
function hanging(
  x: number,
  top: number,
  long: number,
  wide: number,
  kind: number,
  seed: number,
): Solid[] {
  const z = 0.43;
  const ash = wood(seed, 0.42, 'y', 90, 0.03);
  const peg = modelled([x - 0.02, top - 0.02, 0.4], [x + 0.02, top + 0.02, 0.5], ash, (a, b, c) =>
    rod(a, b, c, [x, top, 0.5], [x, top + 0.008, 0.41], 0.008),
  );
  const grip = top - long * 0.34;
  const handle = modelled(
    [x - 0.04, grip - 0.02, z - 0.04],
    [x + 0.04, top - 0.01, z + 0.04],
    ash,
    (a, b, c) => {
      const t = (b - grip) / (top - grip);
      const r = 0.014 + 0.006 * Math.sin(Math.min(1, Math.max(0, t)) * Math.PI);
      return (
        cylinder(a - x, b - (grip + top) / 2 + 0.01, c - z, r, (top - grip) / 2 - 0.012, 0.006) *
        0.9
      );
    },
  );
  const bottom = top - long;
  const blade =
    kind === 0
      ? modelled([x - wide, bottom, z - 0.01], [x + wide, grip, z + 0.01], steel, (a, b, c) =>
          box(a - x, b - (grip + bottom) / 2, c - z, wide * 0.5, (grip - bottom) / 2, 0.003, 0.001),
        )
      : kind === 1
        ? modelled(
            [x - 0.09, bottom, z - 0.04],
            [x + 0.09, grip + 0.05, z + 0.04],
            wood(seed + 1, 0.25, 'x', 60),
            (a, b, c) =>
              Math.min(
                cylinder(a - x, b - (grip + bottom) / 2, c - z, 0.011, (grip - bottom) / 2 + 0.03),
                Math.max(
                  Math.hypot(b - bottom - 0.045, c - z) - 0.036,
                  Math.abs(a - x) - wide * 1.6,
                ),
              ),
          )
        : modelled(
            [x - 0.01, bottom, z - 0.01],
            [x + wide * 3, grip, z + 0.01],
            steel,
            (a, b, c) => {
              const q = (grip - b) / (grip - bottom);
              const edge = wide * (2.6 - 1.5 * q);
              const teeth = 0.004 * Math.abs(((b * 130) % 1) - 0.5);
              return (
                Math.max(
                  Math.abs(a - x - edge / 2) - edge / 2 + teeth,
                  Math.abs(c - z) - 0.002,
                  b - grip,
                  bottom - b,
                ) * 0.8
              );
            },
          );
  return [peg, handle, blade];
}

/** A curl of shaved wood: a ribbon wound about a level axis. */
function shaving(x: number, y: number, z: number, r: number, turn: number, seed: number): Solid {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const reach = r * 1.7;
  return modelled(
    [x - reach, y, z - reach],
    [x + reach, y + 2.3 * r, z + reach],
    wood(seed, 0.62, 'x', 120),
    (wx, wy, wz) => {
      const a = (wx - x) * c + (wz - z) * s;
      const b = -(wx - x) * s + (wz - z) * c;
      const q = wy - y - r;
      const angle = (Math.atan2(q, a) / (2 * Math.PI) + 1) % 1;
      const rho = Math.hypot(a, q);
      let d = Infinity;
      for (let k = 0; k < 2; k++) {
        const want = r * (0.5 + 0.5 * ((k + angle) / 2));
        d = Math.min(d, Math.abs(rho - want) - 0.0008);
      }
      return Math.max(d, Math.abs(b) - 0.014) * 0.75;
    },
  );
}

export const toolBench: SceneMaker = (seed) => {
  const beech = wood(seed + 1, 0.34, 'x', 45, 0.02);
  const dark = wood(seed + 2, 0.2, 'x', 70, 0.03);
  const tools = [
    [-0.53, 0.78, 0.4, 0.03, 0],
    [-0.43, 0.77, 0.34, 0.024, 0],
    [-0.3, 0.77, 0.33, 0.05, 1],
    [-0.17, 0.76, 0.3, 0.02, 0],
    [-0.08, 0.76, 0.26, 0.014, 0],
    [0.02, 0.79, 0.5, 0.05, 2],
    [0.26, 0.76, 0.25, 0.01, 0],
    [0.37, 0.75, 0.23, 0.034, 1],
    [0.49, 0.75, 0.21, 0.012, 0],
    [0.56, 0.75, 0.19, 0.016, 0],
  ] as const;
  return {
    solids: [
      block([-1, -0.06, -0.35], [1, 0, 0.4], wood(seed, 0.3, 'x', 34)),
      block([-1, -0.3, -0.36], [1, -0.06, -0.32], wood(seed + 9, 0.27, 'x', 30)),
      block([-1.2, -0.5, 0.46], [1.2, 1.5, 0.5], boards(seed + 3, 0.3, 0.19, 'x')),
      block([-1, 0.82, 0.38], [1, 0.855, 0.46], dark),
      ...tools.flatMap(([x, top, long, wide, kind], k) =>
        hanging(x, top, long, wide, kind, seed + 20 + k),
      ),
      // A jack plane: body, wedge, iron, knob and handle.
      modelled([-0.27, 0, -0.16], [0.17, 0.18, 0.0], beech, (x, y, z) => {
        const pz = z + 0.08;
        let d = box(x + 0.05, y - 0.035, pz, 0.21, 0.035, 0.04, 0.006);
        d = carve(d, box(x + 0.03 - (y - 0.07) * 0.5, y - 0.07, pz, 0.026, 0.04, 0.028), 0.004);
        d = blend(d, rod(x, y, pz, [0.09, 0.07, 0], [0.105, 0.125, 0], 0.016, 0.015), 0.012);
        d = blend(d, rod(x, y, pz, [0.105, 0.125, 0], [0.065, 0.14, 0], 0.013, 0.008), 0.012);
        return Math.min(d, rod(x, y, pz, [-0.19, 0.07, 0], [-0.19, 0.095, 0], 0.012, 0.02));
      }),
      modelled([-0.06, 0.03, -0.12], [0.06, 0.17, -0.04], steel, (x, y, z) => {
        const c = Math.cos(0.78);
        const s = Math.sin(0.78);
        const a = (x + 0.02) * c - (y - 0.08) * s;
        const b = (x + 0.02) * s + (y - 0.08) * c;
        return box(a, b, z + 0.08, 0.0022, 0.075, 0.024);
      }),
      // A mallet lying with its head to the right.
      modelled([0.24, 0, -0.22], [0.56, 0.13, 0.1], dark, (x, y, z) => {
        const c = Math.cos(0.6);
        const s = Math.sin(0.6);
        const a = (x - 0.4) * c + (z + 0.06) * s;
        const b = -(x - 0.4) * s + (z + 0.06) * c;
        const block0 = box(a - 0.07, y - 0.05, b, 0.043, 0.05, 0.07, 0.01);
        return blend(
          block0,
          rod(a, y, b, [-0.17, 0.045, 0], [0.07, 0.052, 0], 0.015, 0.017),
          0.006,
        );
      }),
      // The vice at the left end, with its screw and bar.
      modelled([-0.78, -0.2, -0.42], [-0.5, 0.06, -0.3], beech, (x, y, z) =>
        box(x + 0.64, y + 0.07, z + 0.38, 0.11, 0.12, 0.025, 0.006),
      ),
      modelled([-0.8, -0.2, -0.52], [-0.48, 0.06, -0.38], iron(seed + 6), (x, y, z) =>
        Math.min(
          rod(x, y, z, [-0.64, -0.07, -0.4], [-0.64, -0.07, -0.49], 0.016),
          rod(x, y, z, [-0.76, -0.09, -0.48], [-0.52, -0.05, -0.48], 0.008),
        ),
      ),
      // A rib being shaped, a square, a pot of pitch.
      modelled([-0.75, 0, 0.06], [0.45, 0.09, 0.3], wood(seed + 7, 0.5, 'x', 60), (x, y, z) => {
        const bend = 0.1 * (x + 0.1) * (x + 0.1);
        return box(x + 0.15, y - 0.032, z - 0.14 - bend, 0.55, 0.032, 0.028, 0.004) * 0.9;
      }),
      modelled(
        [0.52, 0, 0.05],
        [0.72, 0.19, 0.25],
        iron(seed + 8, 0.07),
        (x, y, z) => {
          const r = Math.hypot(x - 0.62, z - 0.15);
          const pot = Math.max(
            r - 0.07 - 0.1 * Math.max(0, y - 0.02) * 0.4,
            Math.abs(y - 0.08) - 0.08,
          );
          return Math.max(pot, -Math.max(r - 0.066, 0.03 - y));
        },
        0.9,
      ),
      modelled([-0.52, 0, -0.27], [-0.3, 0.03, -0.05], steel, (x, y, z) => {
        const c = Math.cos(0.5);
        const s = Math.sin(0.5);
        const a = (x + 0.43) * c + (z + 0.18) * s;
        const b = -(x + 0.43) * s + (z + 0.18) * c;
        return Math.min(
          box(a, y - 0.004, b, 0.1, 0.002, 0.014),
          box(a + 0.09, y - 0.008, b - 0.06, 0.013, 0.008, 0.07),
        );
      }),
      ...Array.from({ length: 15 }, (_, k) => {
        const r = (n: number): number => lattice(k, n, 3, seed + 77);
        return shaving(
          -0.16 + 0.62 * r(1) * (k < 9 ? 0.6 : 1),
          0,
          -0.3 + 0.24 * r(2),
          0.014 + 0.014 * r(3),
          6.3 * r(4),
          seed + 40 + k,
        );
      }),
    ],
    source: {
      kind: 'window',
      centre: [-1.25, 1.15, -0.1],
      across: [0.1, 0, -0.28],
      up: [0.1, 0.3, 0.05],
      facing: [0.8, -0.55, 0.2],
      radiance: 30,
    },
    sky: (_x, dy) => 0.07 + 0.04 * dy,
    seen: () => 0.05,
    camera: { position: [0.04, 0.5, -1.6], target: [0.0, 0.355, 0.1], tangent: 0.292 },
    ambient: 0.03,
    exposure: 1.7,
    haze: Infinity,
    hazeRadiance: 0,
    softness: 1,
  };
};
