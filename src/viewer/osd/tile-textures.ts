/** Textures of tiles: made when a tile is first drawn, freed when the library drops the tile. */
import type OpenSeadragon from 'openseadragon';

export interface TileTexture {
  readonly texture: WebGLTexture;
  /** The part without overlap: left, top, right, bottom in texture coordinates. */
  readonly cut: readonly [number, number, number, number];
}

/** How many pixels of overlap a tile has on each side: left, top, right, bottom. */
export function overlapOf(tile: OpenSeadragon.Tile): readonly [number, number, number, number] {
  const overlap = tile.tiledImage?.source.tileOverlap ?? 0;
  return [
    tile.x === 0 ? 0 : overlap,
    tile.y === 0 ? 0 : overlap,
    tile.isRightMost ? 0 : overlap,
    tile.isBottomMost ? 0 : overlap,
  ];
}

export class TileTextures {
  private readonly gl: WebGL2RenderingContext;
  private readonly live = new WeakSet<WebGLTexture>();

  constructor(gl: WebGL2RenderingContext) {
    this.gl = gl;
  }

  /** Upload one tile. Codes go up as they are; the hardware decodes sRGB before filtering. */
  make(
    source: TexImageSource & { width: number; height?: number },
    tile: OpenSeadragon.Tile,
  ): TileTexture {
    const gl = this.gl;
    const texture = gl.createTexture();
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.pixelStorei(gl.UNPACK_PREMULTIPLY_ALPHA_WEBGL, false);
    gl.pixelStorei(gl.UNPACK_COLORSPACE_CONVERSION_WEBGL, gl.NONE);
    gl.pixelStorei(gl.UNPACK_FLIP_Y_WEBGL, false);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.SRGB8_ALPHA8, gl.RGBA, gl.UNSIGNED_BYTE, source);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
    this.live.add(texture);
    const [left, top, right, bottom] = overlapOf(tile);
    const width = source.width;
    const height = source.height ?? source.width;
    return {
      texture,
      cut: [left / width, top / height, (width - right) / width, (height - bottom) / height],
    };
  }

  /** Free a texture of this context; one of an earlier context went with it. */
  free(tile: TileTexture): void {
    if (this.live.delete(tile.texture)) this.gl.deleteTexture(tile.texture);
  }

  /** Whether a texture belongs to the context as it is now. */
  has(tile: TileTexture): boolean {
    return this.live.has(tile.texture);
  }
}
