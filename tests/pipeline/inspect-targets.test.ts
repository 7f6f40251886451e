/** Targets in a sitting: a faithful one gives no finding, each fault its own. */
import { afterAll, describe, expect, test } from 'vitest';
import { target24 } from '../../src/imaging/inspect/target24.ts';
import { blurredEdge } from '../fixtures/inspect/edge.ts';
import { inspectPlan, removeInspected } from '../fixtures/inspect/inspect-plan.ts';
import { cleanPlan, draw, type SittingPlan } from '../fixtures/inspect/sitting-folder.ts';
import { targetChart, type ChartOptions } from '../fixtures/inspect/target-chart.ts';

afterAll(removeInspected);

/** The clean sitting without its bracket, with a target photographed beside `normal`. */
function withTarget(
  target: object,
  picture: { width: number; height: number; data: Float32Array },
): SittingPlan {
  const plan = cleanPlan();
  const [normal, axial] = plan.sitting.captures as object[];
  const files = { 'normal.tif': plan.files['normal.tif'], 'axial.tif': plan.files['axial.tif'] };
  return {
    ...plan,
    files: { ...files, 'target.tif': { picture } },
    sitting: {
      ...plan.sitting,
      captures: [{ ...normal, target: { file: 'target.tif', ...target } }, axial],
    },
  };
}

function withChart(options: Partial<ChartOptions>, more: object = {}): SittingPlan {
  const chart = targetChart({ patches: target24['from-2014-11'], ...options });
  const corners = chart.corners.map(([x, y]) => [x, y]);
  return withTarget({ kind: '24-patch', corners, edition: 'from-2014-11', ...more }, chart);
}

async function codes(plan: SittingPlan): Promise<string[]> {
  return (await inspectPlan(plan)).findings.map((f) => f.code);
}

describe('a 24-patch target', () => {
  test('of either edition, faithfully photographed, gives no finding but its figures', async () => {
    const { findings, inspections } = await inspectPlan(withChart({}));
    expect(findings).toEqual([]);
    const figures = inspections.get('sitting/normal')?.measurements ?? [];
    const mean = figures.find((m) => m.quantity === 'colour-mean');
    expect(mean?.standing).toBe('within the 4-star figure for colour mean (below 2 ΔE2000)');
    expect(mean?.edition).toBe('FADGI 2016, Prints and Photographs');
    const old = { patches: target24['before-2014-11'] };
    expect(await codes(withChart(old, { edition: 'before-2014-11' }))).toEqual([]);
  });

  test('of an edition that nobody wrote down is asked for', async () => {
    const { findings } = await inspectPlan(withChart({}, { edition: undefined }));
    expect(findings.map((f) => `${f.level} ${f.code}`)).toEqual(['note target-edition-unknown']);
    expect(findings[0].remedy).toContain('before-2014-11');
  });

  test('in a mirrored file is called mirrored, not badly coloured', async () => {
    const { findings } = await inspectPlan(withChart({ mirrored: true }));
    expect(findings.map((f) => f.code)).toEqual(['target-corners-order']);
    expect(findings[0].message).toContain('fits far better mirrored');
  });

  test('under a yellow lamp names the white balance and what it does to colour', async () => {
    const { findings } = await inspectPlan(withChart({ balance: [1.08, 1, 0.85] }));
    expect(findings.map((f) => f.code)).toContain('white-balance-off');
    expect(findings.every((f) => f.edition === 'FADGI 2016, Prints and Photographs')).toBe(true);
  });

  test('exposed too short names the tone', async () => {
    expect(await codes(withChart({ balance: [0.75, 0.75, 0.75] }))).toContain('tone-off');
  });

  test('with corners outside the picture says which file and how large it is', async () => {
    const { findings } = await inspectPlan(
      withChart(
        {},
        {
          corners: [
            [0, 0],
            [900, 0],
            [900, 200],
            [0, 200],
          ],
        },
      ),
    );
    expect(findings.map((f) => f.code)).toEqual(['target-not-measured']);
    expect(findings[0].message).toContain('outside target.tif, which has 420 × 300 pixels');
  });
});

describe('a slanted edge', () => {
  const corners = [
    [10, 10],
    [109, 10],
    [109, 139],
    [10, 139],
  ];
  const edge = (sigma: number) =>
    blurredEdge({ width: 120, height: 150, angle: 5, sigma, centre: 60, aperture: true });

  test('of a good lens gives no finding', async () => {
    expect(await codes(withTarget({ kind: 'slanted-edge', corners }, edge(0.5)))).toEqual([]);
  });

  test('out of focus is soft against the named table', async () => {
    const { findings } = await inspectPlan(
      withTarget({ kind: 'slanted-edge', corners }, edge(1.6)),
    );
    expect(new Set(findings.map((f) => f.code))).toEqual(new Set(['soft']));
    expect(findings[0].edition).toBe('FADGI 2016, Prints and Photographs');
  });
});

describe('a scale in the picture', () => {
  test('that agrees with the stated one gives nothing, one that does not is named', async () => {
    const at = (length: number): SittingPlan => {
      const corners = [
        [100, 600],
        [500, 600],
        [500, 620],
        [100, 620],
      ];
      return withTarget({ kind: 'scale', corners, length }, draw({ reading: 'positive' }));
    };
    expect(await codes(at(50))).toEqual([]);
    const { findings } = await inspectPlan(at(45));
    expect(findings.map((f) => f.code)).toEqual(['wrong-scale']);
    expect(findings[0].message).toContain('the scale in the picture gives 8.89');
  });
});
