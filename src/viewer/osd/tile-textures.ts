/**
 * Textures of tiles: made when a tile is first drawn, freed when the library drops the tile. A
 * picture's tile is one sRGB texture; a data tile is an array of textures, one for each plane,
 * so that filtering never reaches from one plane into the next.
 */
import type OpenSeadragon from 'openseadragon';

export interface TileTexture {
  readonly texture: WebGLTexture;
  /** Planes of a data tile; 0 for a picture. */
  readonly planes: number;
  /** The part without overlap: left, top, right, bottom in texture coordinates. */
  readonly cut: readonly [number, number, number, number];
}

/** How many data planes a picture of the library has; 0 for a picture to look at. */
export function planesOf(item: OpenSeadragon.TiledImage | null | undefined): number {
  const source = item?.source as unknown as { planes?: number } | undefined;
  return source?.planes ?? 0;
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
    source: TexImageSource & { width: number; height: number },
    tile: OpenSeadragon.Tile,
  ): TileTexture {
    const gl = this.gl;
    const planes = planesOf(tile.tiledImage);
    const target = planes > 0 ? gl.TEXTURE_2D_ARRAY : gl.TEXTURE_2D;
    const texture = gl.createTexture();
    gl.bindTexture(target, texture);
    gl.pixelStorei(gl.UNPACK_PREMULTIPLY_ALPHA_WEBGL, false);
    gl.pixelStorei(gl.UNPACK_COLORSPACE_CONVERSION_WEBGL, gl.NONE);
    gl.pixelStorei(gl.UNPACK_FLIP_Y_WEBGL, false);
    const { width } = source;
    const height = source.height / Math.max(1, planes);
    if (planes > 0) {
      // The planes lie under one another in the file: consecutive images of an array.
      gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
      gl.pixelStorei(gl.UNPACK_IMAGE_HEIGHT, height);
      const [inner, outer] = [gl.R8, gl.RED];
      gl.texImage3D(target, 0, inner, width, height, planes, 0, outer, gl.UNSIGNED_BYTE, source);
      gl.pixelStorei(gl.UNPACK_IMAGE_HEIGHT, 0);
    } else {
      gl.texImage2D(target, 0, gl.SRGB8_ALPHA8, gl.RGBA, gl.UNSIGNED_BYTE, source);
    }
    gl.texParameteri(target, gl.TEXTURE_MIN_FILTER, gl.LINEAR);
    gl.texParameteri(target, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
    gl.texParameteri(target, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
    gl.texParameteri(target, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
    this.live.add(texture);
    const [left, top, right, bottom] = overlapOf(tile);
    return {
      texture,
      planes,
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
