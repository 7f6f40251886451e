import { describe, expect, test } from 'vitest';
import { bandedSystem } from '../../../src/imaging/mosaic/banded-system.ts';
import { emptyCells, neighbourPairs } from '../../../src/imaging/mosaic/grid.ts';
import { levelGain, seamAt, shareAfter } from '../../../src/imaging/mosaic/seam-weights.ts';
import { seamPath } from '../../../src/imaging/mosaic/seam-path.ts';
import { solveSparse } from '../../../src/imaging/mosaic/sparse-squares.ts';

describe('equations', () => {
  test('a banded system agrees with numpy.linalg.solve', () => {
    // NumPy 2.4.6: np.linalg.solve([[4,1,0,0],[1,5,2,0],[0,2,6,1],[0,0,1,3]], [1,2,3,4])
    const system = bandedSystem(4, 1);
    for (const [i, j, value] of [
      [0, 0, 4],
      [0, 1, 1],
      [1, 1, 5],
      [1, 2, 2],
      [2, 2, 6],
      [3, 2, 1],
      [3, 3, 3],
    ]) {
      system.add(i, j, value);
    }
    system.right.set([1, 2, 3, 4]);
    const solved = [...system.solve()!];
    [0.17818182, 0.28727273, 0.19272727, 1.26909091].forEach((expected, i) => {
      expect(solved[i]).toBeCloseTo(expected, 7);
    });
  });

  test('a banded system without a solution says so', () => {
    const system = bandedSystem(2, 1);
    system.add(0, 0, 1);
    system.add(1, 1, 1);
    system.add(0, 1, 1);
    expect(system.solve()).toBeNull();
    expect(() => bandedSystem(4, 1).add(0, 3, 1)).toThrow('outside of the band');
  });

  test('sparse least squares agree with numpy.linalg.lstsq', () => {
    // NumPy 2.4.6: M=[[1,-1,0],[0,1,-1],[1,0,-1],[1,1,1]], v=[.3,.2,.6,0], s=sqrt([2,1,1,.5]);
    //   np.linalg.lstsq(M*s[:,None], v*s)
    const found = solveSparse(
      [
        { unknowns: [0, 1], coefficients: [1, -1], value: 0.3, weight: 2 },
        { unknowns: [1, 2], coefficients: [1, -1], value: 0.2, weight: 1 },
        { unknowns: [0, 2], coefficients: [1, -1], value: 0.6, weight: 1 },
        { unknowns: [0, 1, 2], coefficients: [1, 1, 1], value: 0, weight: 0.5 },
      ],
      new Float64Array(3),
    );
    [0.29333333, -0.02666667, -0.26666667].forEach((expected, i) => {
      expect(found[i]).toBeCloseTo(expected, 7);
    });
  });
});

describe('seams', () => {
  const cost = [
    [8, 1, 2, 3, 2, 8, 8],
    [6, 1, 1, 3, 4, 6, 5],
    [3, 2, 7, 7, 1, 2, 5],
    [4, 8, 5, 4, 4, 6, 6],
    [2, 7, 7, 9, 8, 3, 3],
    [6, 6, 7, 8, 3, 9, 1],
  ];

  test('the cheapest way is that of scikit-image', () => {
    // scikit-image 0.19.3: m = graph.MCP(cost, offsets=[(1,-1),(1,0),(1,1)]); the cheapest end of
    //   m.find_costs([(0, j) for j in range(7)]) costs 14 and its traceback is this path.
    const path = seamPath(
      cost.map(() => ({ from: 0, to: 6 })),
      (line, at) => cost[line][at],
    );
    expect([...path]).toEqual([2, 3, 4, 4, 5, 6]);
  });

  test('a seam keeps to its interval and follows where that jumps', () => {
    const path = seamPath(
      [
        { from: 0, to: 1 },
        { from: 4, to: 6 },
      ],
      (line, at) => cost[line][at],
    );
    expect([...path]).toEqual([1, 4]);
  });

  test('positions are those of cells: the middle of the first of four pixels is 1.5', () => {
    // A seam through the middle of cell 0 of side 4, whose pixels are 0 to 3.
    expect(seamAt([0.5, 0.5], 2, 4)).toBeCloseTo(1.5, 12);
    expect(seamAt([0.5, 1.5], 3.5, 4)).toBeCloseTo(3.5, 12);
  });

  test('the shares of both sides of a seam add up to 1', () => {
    for (const d of [-9, -6, -2.5, 0, 1, 6, 30]) {
      expect(shareAfter(d, 6) + shareAfter(-d, 6)).toBeCloseTo(1, 12);
    }
    expect(shareAfter(3, 6)).toBe(0.75);
  });

  test('a level brings its two sides together at the seam and is gone where it ends', () => {
    // exp(0.1 / 2) on one side and its inverse on the other: a factor of exp(0.1) apart.
    expect(levelGain(0.1, 0, 50) / levelGain(-0.1, 0, 50)).toBeCloseTo(Math.exp(0.1), 12);
    expect(levelGain(0.1, 50, 50)).toBe(1);
  });
});

describe('the grid', () => {
  const tiles = [
    [0, 0],
    [0, 1],
    [1, 1],
  ].map(([row, column]) => ({ row, column, width: 100, height: 80 }));

  test('names the pairs that share an edge', () => {
    expect(neighbourPairs(tiles)).toEqual([
      { first: 0, second: 1, side: 'right' },
      { first: 1, second: 2, side: 'below' },
    ]);
  });

  test('names the cells without a tile', () => {
    expect(emptyCells(tiles)).toEqual([{ row: 1, column: 0 }]);
  });
});
