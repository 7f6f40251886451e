/**
 * The addresses that OpenSeadragon asks for, by its own tile source, in Node. The library wants a
 * page when it loads but not for this arithmetic, so an object that answers to everything stands
 * in for one.
 */
import { createRequire } from 'node:module';

interface TileSource {
  readonly minLevel: number;
  readonly maxLevel: number;
  getNumTiles(level: number): { x: number; y: number };
  getTileUrl(level: number, x: number, y: number): string;
}
interface Viewer {
  readonly IIIFTileSource: {
    new (options: unknown): TileSource;
    readonly prototype: { configure(info: unknown, address: string): unknown };
  };
}

function anything(): unknown {
  return new Proxy(() => undefined, {
    get: (_, key) => (key === Symbol.toPrimitive ? () => '' : anything()),
    set: () => true,
    apply: () => anything(),
    construct: () => anything() as object,
  });
}

const page: Record<string, unknown> = {
  window: globalThis,
  self: globalThis,
  document: anything(),
  location: { protocol: 'http:', href: 'http://host/', search: '' },
};
for (const [name, value] of Object.entries(page)) {
  Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
}
Object.defineProperty(globalThis, 'navigator', {
  value: { userAgent: '', appName: '', appVersion: '', vendor: '' },
  configurable: true,
});
const viewer = createRequire(import.meta.url)('openseadragon') as Viewer;

/** Every tile of every level, relative to the service's address, by the normal way of loading. */
export function tileRequests(info: Record<string, unknown>, address: string): string[] {
  const options = viewer.IIIFTileSource.prototype.configure(
    structuredClone(info),
    `${address}/info.json`,
  );
  const source = new viewer.IIIFTileSource(options);
  const asked: string[] = [];
  for (let level = source.minLevel; level <= source.maxLevel; level += 1) {
    const { x: columns, y: rows } = source.getNumTiles(level);
    for (let y = 0; y < rows; y += 1) {
      for (let x = 0; x < columns; x += 1) {
        asked.push(source.getTileUrl(level, x, y).slice(address.length + 1));
      }
    }
  }
  return asked;
}
