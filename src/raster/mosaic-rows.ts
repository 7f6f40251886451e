/**
 * A mosaic as rows: each row is drawn from the close-ups that reach it, warped, balanced and
 * mixed across their seams in linear light. A close-up is opened when the first row needs it and
 * closed after the last; of each only the band of rows in use is held, so that memory grows with
 * the mosaic's width alone.
 *
 * Where no close-up reaches, the mosaic is black: nothing is invented there.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { linearised } from '../imaging/colour/light.ts';
import { gainRow } from '../imaging/mosaic/gain-field.ts';
import type { MosaicPlan, MosaicTile } from '../imaging/mosaic/plan.ts';
import {
  bandShares,
  coveredSpan,
  levelGain,
  shareAfter,
  tileSpan,
} from '../imaging/mosaic/seam-weights.ts';
import { openRows, type OpenOptions } from './capture-rows.ts';
import type { RowBatch, RowSource } from './row-source.ts';
import { openWarp, type OpenWarp } from './warped-rows.ts';

/**
 * @param captures Folder that the plan's files lie in.
 * @throws CaptureFault when a close-up is no capture; RangeError when they are not of one kind.
 */
export async function openMosaic(
  plan: MosaicPlan,
  captures: string,
  options: OpenOptions = {},
): Promise<RowSource> {
  const first = await openRows(join(captures, plan.tiles[0].file), options);
  const { channels, light } = first;
  await first.close();
  const open = async (tile: MosaicTile): Promise<RowSource> => {
    const source = await openRows(join(captures, tile.file), options);
    if (source.channels === channels && String(source.light.matrix) === String(light.matrix))
      return source;
    await source.close();
    throw new RangeError(
      `${tile.file} has other channels or another colour profile than ${plan.tiles[0].file}; ` +
        'the close-ups of a mosaic must be developed alike.',
    );
  };
  return {
    width: plan.width,
    height: plan.height,
    channels,
    depth: 16,
    light: linearised(light),
    batches(order = 'down') {
      if (order === 'up') throw new RangeError('A mosaic is read from its first row.');
      return composeRows(plan, channels, open);
    },
    close: () => Promise.resolve(),
  };
}

/** The same from a plan in a file. */
export async function openMosaicFile(
  path: string,
  captures: string,
  options: OpenOptions = {},
): Promise<RowSource> {
  const { plan } = JSON.parse(await readFile(path, 'utf8')) as { plan: MosaicPlan };
  return openMosaic(plan, captures, options);
}

async function* composeRows(
  plan: MosaicPlan,
  channels: 1 | 3,
  open: (tile: MosaicTile) => Promise<RowSource>,
): AsyncGenerator<RowBatch> {
  const parts = plan.bands.flatMap((band, b) =>
    band.tiles.map((t, k) => new Part(plan, b, k, plan.tiles[t], open)),
  );
  const light = new Float32Array(plan.width * channels);
  const shares = new Float32Array(plan.width);
  const line = () => ({
    shares: new Float32Array(plan.width),
    gains: new Float32Array(plan.width),
  });
  const bands = plan.bands.map(line);
  const out = new Uint16Array(plan.width * channels);
  try {
    for (let y = 0; y < plan.height; y += 1) {
      light.fill(0);
      shares.fill(0);
      const active = bands.map((own, b) => bandShares(plan, b, y, own.shares, own.gains));
      for (const part of parts) {
        if (!active[part.band]) await part.close();
        else await part.addTo(light, shares, bands[part.band], y);
      }
      finish(light, shares, channels, out);
      yield { data: out, rows: 1 };
    }
  } finally {
    for (const part of parts) await part.close();
  }
}

/** One close-up while its rows are needed. */
class Part {
  readonly band: number;
  private readonly plan: MosaicPlan;
  private readonly k: number;
  private readonly tile: MosaicTile;
  private readonly open: (tile: MosaicTile) => Promise<RowSource>;
  private source: RowSource | null = null;
  private warp: OpenWarp | null = null;

  constructor(
    plan: MosaicPlan,
    band: number,
    k: number,
    tile: MosaicTile,
    open: (tile: MosaicTile) => Promise<RowSource>,
  ) {
    this.plan = plan;
    this.band = band;
    this.k = k;
    this.tile = tile;
    this.open = open;
  }

  async close(): Promise<void> {
    await this.warp?.end();
    await this.source?.close();
    this.warp = null;
    this.source = null;
  }

  /** Add this tile's share of row `y`; rows must come in order. */
  async addTo(light: Float32Array, shares: Float32Array, band: BandLine, y: number) {
    const { plan, tile } = this;
    const own = tileSpan(plan, this.band, this.k, y);
    const covered = coveredSpan(tile.map, tile.width, tile.height, y, plan.width);
    let from = Math.max(own.from, covered.from);
    let to = Math.min(own.to, covered.to);
    while (from < to && band.shares[from] === 0) from += 1;
    while (to > from && band.shares[to - 1] === 0) to -= 1;
    if (from >= to) return;
    this.source ??= await this.open(tile);
    this.warp ??= openWarp(this.source, tile.map, plan.width, plan.height);
    const { channels } = this.source;
    if (this.warp.lacks(y)) await this.warp.reach(y);
    const row = this.warp.row(y, from, to);
    const gains = new Float32Array(to - from);
    gainRow(
      tile.gain,
      (y + 0.5) / plan.cell - 0.5,
      (from + 0.5) / plan.cell - 0.5,
      1 / plan.cell,
      gains,
    );
    for (let x = from, i = 0; x < to; x += 1) {
      const [toLeft, toRight] = [x - own.left, own.right - x];
      let share = band.shares[x];
      let gain = gains[x - from] * band.gains[x];
      if (toLeft < plan.levelReach) {
        share *= shareAfter(toLeft, plan.feather);
        gain *= levelGain(own.leftLevel, toLeft, plan.levelReach);
      }
      if (toRight < plan.levelReach) {
        share *= shareAfter(toRight, plan.feather);
        gain *= levelGain(own.rightLevel, toRight, plan.levelReach);
      }
      shares[x] += share;
      gain *= share;
      for (let c = 0; c < channels; c += 1, i += 1) light[x * channels + c] += gain * row[i];
    }
  }
}

interface BandLine {
  readonly shares: Float32Array;
  /** Of the seams with the bands above and below. */
  readonly gains: Float32Array;
}

/** Where a tile ends inside of a seam's ramp, what is there is taken for the whole. */
function finish(
  light: Float32Array,
  shares: Float32Array,
  channels: 1 | 3,
  out: Uint16Array,
): void {
  for (let x = 0, i = 0; x < shares.length; x += 1) {
    const scale = shares[x] > 0 && shares[x] < 0.9999 ? 1 / shares[x] : 1;
    for (let c = 0; c < channels; c += 1, i += 1) {
      const value = light[i] * scale + 0.5;
      out[i] = value > 65535 ? 65535 : value;
    }
  }
}
