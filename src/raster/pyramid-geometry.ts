/**
 * Which pictures a pyramid of static files is made of: sizes, names, and the document that
 * describes them to any viewer. Numbers and text only.
 *
 * Level k shows the picture at 1/2^k, sizes rounded up, so that the last column and row stand for
 * the source pixels that are left, however few.
 *
 * References
 * - IIIF Image API 3.0: sections 2.1 and 4.8 (addresses in canonical form), 5.2 to 5.4
 *   (info.json, sizes, tiles).
 * - IIIF Image API 3.0, Implementation Notes, section 3 (tile arithmetic).
 * - IIIF Image API 3.0 Compliance, section 3: level 0 must serve `full/max`, every listed size and
 *   every implied tile.
 */

export interface LevelShape {
  /** Source pixels to one of this level's, along each side. */
  readonly factor: number;
  readonly width: number;
  readonly height: number;
}

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Levels from the full picture down to the first that fits one tile. */
export function levelShapes(width: number, height: number, tile: number): LevelShape[] {
  const levels: LevelShape[] = [];
  for (let factor = 1; ; factor *= 2) {
    const level = { factor, width: Math.ceil(width / factor), height: Math.ceil(height / factor) };
    levels.push(level);
    if (level.width <= tile && level.height <= tile) return levels;
  }
}

/** Folder of one tile, relative to the service: region and size in canonical form. */
export function tileAddress(
  source: PictureSize,
  level: LevelShape,
  tile: number,
  column: number,
  row: number,
): string {
  const { factor } = level;
  const width = Math.min(tile, level.width - column * tile);
  const height = Math.min(tile, level.height - row * tile);
  if (level.width <= tile && level.height <= tile) return wholeAddress({ width, height });
  const x = column * tile * factor;
  const y = row * tile * factor;
  const w = Math.min(tile * factor, source.width - x);
  const h = Math.min(tile * factor, source.height - y);
  return `${x},${y},${w},${h}/${width},${height}/0`;
}

/** Folder of one whole picture. */
export function wholeAddress(size: PictureSize): string {
  return `full/${size.width},${size.height}/0`;
}

/** Levels that are also given as whole pictures: the larger ones would be files for nobody. */
export function wholeLevels(levels: readonly LevelShape[], maxPixels: number): LevelShape[] {
  const last = levels.at(-1);
  return levels.filter((l) => l === last || l.width * l.height <= maxPixels);
}

/** Files of a level 0 service, apart from `info.json`, each once; for checks and for counting. */
export function pyramidAddresses(source: PictureSize, tile: number, maxPixels: number): string[] {
  const levels = levelShapes(source.width, source.height, tile);
  const found = new Set<string>(['full/max/0']);
  for (const level of levels) {
    for (let row = 0; row * tile < level.height; row += 1) {
      for (let column = 0; column * tile < level.width; column += 1) {
        found.add(tileAddress(source, level, tile, column, row));
      }
    }
  }
  for (const level of wholeLevels(levels, maxPixels)) found.add(wholeAddress(level));
  return [...found].map((folder) => `${folder}/default.jpg`);
}

/** The service's own description; `id` is the address of the service without a final slash. */
export function infoDocument(
  id: string,
  source: PictureSize,
  tile: number,
  maxPixels: number,
  rights?: string,
): Record<string, unknown> {
  const levels = levelShapes(source.width, source.height, tile);
  const whole = wholeLevels(levels, maxPixels);
  const largest = whole[0];
  const limited = largest.width < source.width || largest.height < source.height;
  return {
    '@context': 'http://iiif.io/api/image/3/context.json',
    id,
    type: 'ImageService3',
    protocol: 'http://iiif.io/api/image',
    profile: 'level0',
    width: source.width,
    height: source.height,
    ...(limited ? { maxWidth: largest.width, maxHeight: largest.height } : {}),
    sizes: whole.map(({ width, height }) => ({ width, height })).reverse(),
    tiles: [{ width: tile, scaleFactors: levels.map((l) => l.factor) }],
    ...(rights === undefined ? {} : { rights }),
  };
}
