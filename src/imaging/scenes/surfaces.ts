/**
 * What the bodies of the scenes are made of: plaster, wood, cloth, stone, brass, glass, water.
 * Albedos are round figures for a plate that sees mostly blue: skin-warm wood is dark, slate
 * and sky are light (common practice, no source).
 */
import { grain, lattice, noise } from './noise.ts';
import { type Surface } from './solid.ts';

const clamp = (v: number): number => (v < 0.01 ? 0.01 : v > 0.95 ? 0.95 : v);

export const plain = (albedo: number): Surface => ({ albedo: () => albedo, mean: albedo });

/** Cast plaster: bright, slightly stained, with small pits. */
export const plaster = (seed: number, tone = 0.8): Surface => ({
  mean: tone,
  albedo: (x, y, z, f) =>
    clamp(
      tone +
        0.07 * grain(x * 14, y * 14, z * 14, seed, 4, f * 14) -
        0.25 * Math.max(0, grain(x * 260, y * 260, z * 260, seed + 3, 2, f * 260) - 0.34),
    ),
  relief: (x, y, z, f) =>
    0.0005 * grain(x * 45, y * 45, z * 45, seed + 5, 3, f * 45) +
    0.00016 * grain(x * 420, y * 420, z * 420, seed + 6, 3, f * 420),
});

/** Planed wood with its grain along one axis. `scale` is rings per metre. */
export const wood = (
  seed: number,
  tone: number,
  axis: 'x' | 'y' | 'z' = 'x',
  scale = 60,
  shine = 0,
): Surface => {
  const turn = (x: number, y: number, z: number): readonly [number, number, number] =>
    axis === 'x' ? [x, y, z] : axis === 'y' ? [y, x, z] : [z, y, x];
  const figure = (x: number, y: number, z: number, f: number): number => {
    const [a, b, c] = turn(x, y, z);
    const warp =
      1.3 * noise(a * 1.7, b * 5, c * 5, seed) + 0.4 * noise(a * 5, b * 14, c * 14, seed + 1);
    const ringing = Math.sin((b * 0.7 + c) * scale + warp * 5);
    const fibre = grain(a * 9, b * 340, c * 340, seed + 2, 3, f * 200);
    return 0.5 * ringing * Math.max(0, 1 - f * scale) + fibre;
  };
  return {
    mean: tone,
    albedo: (x, y, z, f) => clamp(tone * (1 + 0.3 * figure(x, y, z, f))),
    relief: (x, y, z, f) => 0.00016 * figure(x, y, z, f),
    ...(shine > 0 ? { shine, spread: 0.14 } : {}),
  };
};

/** Woven cloth; threads per metre in two directions of the surface. */
export const cloth = (seed: number, tone: number, threads = 450): Surface => {
  const turns = threads * Math.PI;
  const weave = (x: number, y: number, z: number, f: number): number => {
    // A thread narrower than two elements is not drawn at all, or it would beat with them.
    const kept = 1.6 - 4 * f * threads;
    if (kept <= 0) return 0;
    return Math.min(1, kept) * Math.sin((x + 0.35 * z) * turns) * Math.sin((y + 0.35 * z) * turns);
  };
  return {
    mean: tone,
    albedo: (x, y, z, f) =>
      clamp(
        tone *
          (1 +
            0.16 * weave(x, y, z, f) +
            0.14 * grain(x * 60, y * 420, z * 60, seed, 3, f * 260) +
            0.14 * grain(x * 420, y * 60, z * 420, seed + 1, 3, f * 260) +
            0.16 * grain(x * 6, y * 6, z * 6, seed + 9, 4, f * 6)),
      ),
    relief: (x, y, z, f) =>
      0.00016 * weave(x, y, z, f) +
      0.0012 * grain(x * 45, y * 45, z * 45, seed + 4, 3, f * 45) +
      0.0002 * grain(x * 300, y * 300, z * 300, seed + 5, 2, f * 300),
  };
};

/** Dressed stone in courses: `course` is the height of a row, metres. Works on walls along x or z. */
export const masonry = (seed: number, tone: number, course: number, joint = 0.012): Surface => {
  const lay = (x: number, y: number, z: number): readonly [number, number] => {
    const row = Math.floor(y / course);
    const along = (x + z) / (course * 2.1) + (row & 1) * 0.5 + 0.2 * lattice(row, 0, 0, seed);
    const stone = Math.floor(along);
    const dy = Math.abs(y / course - row - 0.5);
    const dx = Math.abs(along - stone - 0.5) * 2.1;
    const edge = Math.min(0.5 - dy, 1.05 - dx) * course;
    return [edge, lattice(stone, row, 7, seed)];
  };
  return {
    mean: tone,
    albedo: (x, y, z, f) => {
      const [edge, stone] = lay(x, y, z);
      const mortar = edge < Math.max(joint, f * 0.5) ? 0.68 : 1;
      const kept = Math.min(1, Math.max(0, 1.4 - f / (course * 0.4)));
      return clamp(
        tone *
          (1 - kept + kept * mortar * (0.86 + 0.26 * stone)) *
          (1 +
            0.35 * grain(x * 5, y * 5, z * 5, seed + 1, 5, f * 5) +
            0.25 * grain(x * 0.5, y * 0.25, z * 0.5, seed + 2, 3, f * 0.5)),
      );
    },
    relief: (x, y, z, f) => {
      const [edge] = lay(x, y, z);
      const kept = Math.max(0, 1 - f / (course * 0.5));
      return (
        kept * 0.016 * Math.min(1, edge / (joint * 2.5)) +
        0.022 * grain(x * 9, y * 9, z * 9, seed + 3, 4, f * 9)
      );
    },
  };
};

/** Round stones set in earth, for quays and streets. */
export const cobbles = (seed: number, tone: number, size: number): Surface => {
  const dome = (x: number, z: number): readonly [number, number] => {
    const row = Math.floor(z / size);
    const u = x / (size * 1.35) + 0.5 * (row & 1);
    const stone = Math.floor(u);
    const a = (u - stone - 0.5 + 0.16 * (lattice(stone, row, 2, seed) - 0.5)) * 2.1;
    const b = (z / size - row - 0.5 + 0.16 * (lattice(stone, row, 3, seed) - 0.5)) * 2.1;
    return [Math.max(0, 1 - a ** 4 - b ** 4), lattice(stone, row, 1, seed)];
  };
  return {
    mean: tone,
    albedo: (x, y, z, f) => {
      const kept = Math.max(0, Math.min(1, 1.5 - f / (size * 0.35)));
      const [h, stone] = dome(x, z);
      const worn =
        kept * ((0.45 + 0.55 * Math.min(1, h * 2)) * (0.75 + 0.5 * stone)) + (1 - kept) * 0.85;
      return clamp(
        tone *
          worn *
          (1 +
            0.3 * grain(x * 14, y * 14, z * 14, seed, 4, f * 14) +
            0.35 * grain(x * 0.7, 0, z * 0.7, seed + 1, 4, f * 0.7)),
      );
    },
    relief: (x, y, z, f) => {
      const kept = Math.max(0, 1 - f / (size * 0.45));
      return (
        kept * size * 0.28 * Math.sqrt(dome(x, z)[0]) +
        0.008 * grain(x * 22, y * 22, z * 22, seed + 4, 3, f * 22)
      );
    },
  };
};

/** Upright or level boards, each its own tone. `axis` is the direction across the boards. */
export const boards = (
  seed: number,
  tone: number,
  wide: number,
  axis: 'x' | 'y' | 'z',
): Surface => {
  const across = (x: number, y: number, z: number): number =>
    axis === 'x' ? x : axis === 'y' ? y : z;
  return {
    mean: tone,
    albedo: (x, y, z, f) => {
      const u = across(x, y, z) / wide;
      const board = Math.floor(u);
      const gap = Math.min(u - board, board + 1 - u) * wide;
      const [a, b] = axis === 'x' ? [y, z] : axis === 'y' ? [x, z] : [x, y];
      const streak = grain(u * wide * 70, a * 2.2, b * 2.2 + board * 7.3, seed, 5, f * 60);
      const knot = noise(u * 2.5, a * 1.8, board * 3.1, seed + 2);
      const dark = gap < Math.max(0.004, f * 0.4) ? 0.3 : 1;
      return clamp(
        tone * dark * (0.75 + 0.5 * lattice(board, 3, 1, seed)) * (1 + 0.42 * streak + 0.12 * knot),
      );
    },
    relief: (x, y, z, f) => {
      const u = across(x, y, z) / wide;
      const gap = Math.min(u - Math.floor(u), 1 - u + Math.floor(u)) * wide;
      const kept = Math.max(0, 1 - f / (wide * 0.3));
      return (
        kept * 0.004 * Math.min(1, gap / 0.008) +
        0.0006 * grain(x * 60, y * 60, z * 60, seed, 3, f * 60)
      );
    },
  };
};

/** Rough lime-washed wall. */
export const limewash = (seed: number, tone: number): Surface => ({
  mean: tone,
  albedo: (x, y, z, f) =>
    clamp(
      tone *
        (1 +
          0.12 * grain(x * 1.3, y * 1.3, z * 1.3, seed, 5, f * 1.3) +
          0.18 * Math.min(0, grain(x * 3, y * 1.1, z * 3, seed + 1, 4, f * 3))),
    ),
  relief: (x, y, z, f) => 0.004 * grain(x * 14, y * 14, z * 14, seed + 2, 5, f * 14),
});

export const brass = (seed: number): Surface => ({
  mean: 0.22,
  albedo: (x, y, z, f) => clamp(0.2 + 0.1 * grain(x * 40, y * 40, z * 40, seed, 4, f * 40)),
  relief: (x, y, z, f) => 0.00006 * grain(x * 90, y * 90, z * 90, seed, 3, f * 90),
  shine: 0.5,
});

/** Dark bottle glass. */
export const bottleGlass = (): Surface => ({ mean: 0.05, albedo: () => 0.035, shine: 0.045 });

export const iron = (seed: number, tone = 0.09): Surface => ({
  mean: tone,
  albedo: (x, y, z, f) => clamp(tone * (1 + 0.7 * grain(x * 30, y * 30, z * 30, seed, 4, f * 30))),
  relief: (x, y, z, f) => 0.0006 * grain(x * 70, y * 70, z * 70, seed, 3, f * 70),
  shine: 0.05,
  spread: 0.3,
});

/** Slates or tiles in courses on a roof that rises along y. */
export const slates = (seed: number, tone: number, course: number): Surface => ({
  mean: tone,
  albedo: (x, y, z, f) => {
    const row = Math.floor(y / course);
    const u = (x + z) / (course * 1.3) + 0.5 * (row & 1);
    const kept = Math.max(0, Math.min(1, 1.5 - f / (course * 0.35)));
    const low = y / course - row;
    const shadow = low < 0.14 ? 0.55 : 1;
    return clamp(
      tone *
        (1 - kept + kept * shadow * (0.75 + 0.5 * lattice(Math.floor(u), row, 0, seed))) *
        (1 + 0.3 * grain(x * 2, y * 2, z * 2, seed, 4, f * 2)),
    );
  },
});

/** Still water after a long exposure. */
export const water = (): Surface => ({
  mean: 0.05,
  albedo: () => 0.045,
  shine: 0.03,
  spread: 0.1,
  water: true,
});
