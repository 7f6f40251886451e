/**
 * Draws each picture of the deep zoom library into its own linear-light layer the size of the
 * screen, then combines the layers in one last pass. Moving a control repeats that pass alone:
 * no tile is asked for, no tile is drawn again.
 *
 * Layers are SRGB8_ALPHA8: the hardware decodes on reading and encodes on writing, so sampling,
 * blending and combining happen in linear light at half the memory of floating point.
 */
import OpenSeadragon from 'openseadragon';
import { layersOf, type Look } from '../look.ts';
import { LayerStack } from './layer-stack.ts';
import { LastPass } from './last-pass.ts';
import { TileTextures, type TileTexture } from './tile-textures.ts';
import { TilePass } from './tile-pass.ts';

/** Members of the library that its type file leaves out. */
interface DrawerInternals {
  _calculateCanvasSize(): { x: number; y: number };
}

/** Work done so far, for the tests and the bench. */
export interface DrawerCounts {
  layerPasses: number;
  lastPasses: number;
  uploads: number;
  frees: number;
}

export class PlateDrawer extends OpenSeadragon.DrawerBase {
  readonly counts: DrawerCounts = { layerPasses: 0, lastPasses: 0, uploads: 0, frees: 0 };
  private look: Look = { kind: 'single' };
  private order: readonly OpenSeadragon.TiledImage[] = [];
  private gl!: WebGL2RenderingContext;
  private textures!: TileTextures;
  private tiles!: TilePass;
  private layers!: LayerStack;
  private last!: LastPass;
  private pending = 0;
  private lost = false;
  private gone = false;
  private readonly again = () => this.viewer.forceRedraw();

  constructor(options: ConstructorParameters<typeof OpenSeadragon.DrawerBase>[0]) {
    super(options);
    const gl = this.canvas.getContext('webgl2', {
      alpha: true,
      antialias: false,
      depth: false,
      stencil: false,
      premultipliedAlpha: true,
    });
    if (gl === null) throw new Error('WebGL 2 was promised by the browser and then refused.');
    this.gl = gl;
    this.prepare();
    this.canvas.addEventListener('webglcontextlost', (event) => {
      event.preventDefault();
      this.lost = true;
    });
    this.canvas.addEventListener('webglcontextrestored', () => {
      this.lost = false;
      this.prepare();
      this.setInternalCacheNeedsRefresh();
      this.viewer.forceRedraw();
    });
    this.viewer.addHandler('resize', this.again);
  }

  static override isSupported(): boolean {
    const gl = document.createElement('canvas').getContext('webgl2');
    gl?.getExtension('WEBGL_lose_context')?.loseContext();
    return gl !== null;
  }

  override get defaultOptions(): OpenSeadragon.BaseDrawerOptions {
    return { usePrivateCache: true, preloadCache: false };
  }

  override getType(): string {
    return 'plate';
  }

  override canRotate(): boolean {
    return true;
  }

  override setImageSmoothingEnabled(): void {
    // Always bilinear in linear light.
  }

  override getSupportedDataFormats(): string[] {
    return ['plainBitmap'];
  }

  /** Called by the library's constructor. */
  _createDrawingElement(): HTMLCanvasElement {
    const canvas = document.createElement('canvas');
    const size = (this as unknown as DrawerInternals)._calculateCanvasSize();
    canvas.width = size.x;
    canvas.height = size.y;
    return canvas;
  }

  /** Which pictures are the first and the second layer. */
  setOrder(order: readonly OpenSeadragon.TiledImage[]): void {
    this.order = order;
  }

  /** Change how layers are combined; drawn at the next frame, once. */
  setLook(look: Look): void {
    this.look = look;
    if (this.pending !== 0 || this.gone) return;
    this.pending = requestAnimationFrame(() => {
      this.pending = 0;
      this.finish();
    });
  }

  override internalCacheCreate(cache: { data: unknown }, tile: OpenSeadragon.Tile) {
    if (this.lost) return undefined;
    this.counts.uploads++;
    return this.textures.make(cache.data as TexImageSource & { width: number }, tile);
  }

  override internalCacheFree(texture: TileTexture | undefined): void {
    if (texture === undefined) return;
    this.counts.frees++;
    // Called on a replaced drawer as well, and for textures of a context that is gone.
    if (!this.lost && !this.gone) this.textures.free(texture);
  }

  /** Called by the library when tiles or what is in sight have changed. */
  draw(items: OpenSeadragon.TiledImage[]): void {
    // Asked for once per picture and frame: it also protects these tiles from eviction.
    const tiles = new Map(items.map((item) => [item, item.getTilesToDraw()]));
    if (this.lost || this.gone || this.gl.isContextLost()) return;
    this.counts.layerPasses++;
    const size = (this as unknown as DrawerInternals)._calculateCanvasSize();
    if (this.canvas.width !== size.x || this.canvas.height !== size.y) {
      this.canvas.width = size.x;
      this.canvas.height = size.y;
    }
    const shown = this.order.filter((item) => tiles.has(item)).slice(0, 2);
    this.layers.fit(Math.max(1, shown.length), size.x, size.y);
    this.tiles.begin(this.viewport, size.x, size.y);
    shown.forEach((item, n) => {
      this.layers.target(n);
      for (const { tile } of tiles.get(item) ?? []) {
        const texture = this.getDataToDraw(tile) as TileTexture | undefined;
        if (texture !== undefined && this.textures.has(texture)) this.tiles.draw(tile, texture);
      }
    });
    this.finish();
  }

  /** The last pass. */
  private finish(): void {
    if (this.lost || this.gone || !this.layers.ready) return;
    this.counts.lastPasses++;
    const enough = this.layers.count >= layersOf(this.look);
    const look: Look = enough ? this.look : { kind: 'single' };
    this.last.draw(look, this.layers, this.density());
  }

  /** Device pixels per CSS pixel of this canvas. */
  private density(): number {
    return this.canvas.width / Math.max(1, this.viewport.getContainerSize().x);
  }

  /** Combine now and read pixels back, RGBA from the top row down. For tests and the bench. */
  read(x: number, y: number, width: number, height: number): Uint8Array {
    this.finish();
    const rows = new Uint8Array(width * height * 4);
    const bottom = this.canvas.height - y - height;
    this.gl.readPixels(x, bottom, width, height, this.gl.RGBA, this.gl.UNSIGNED_BYTE, rows);
    const upright = new Uint8Array(rows.length);
    for (let row = 0; row < height; row++)
      upright.set(
        rows.subarray((height - 1 - row) * width * 4, (height - row) * width * 4),
        row * width * 4,
      );
    return upright;
  }

  private prepare(): void {
    this.textures = new TileTextures(this.gl);
    this.tiles = new TilePass(this.gl);
    this.layers = new LayerStack(this.gl);
    this.last = new LastPass(this.gl);
  }

  override destroy(): void {
    this.gone = true;
    cancelAnimationFrame(this.pending);
    super.destroy();
    this.viewer.removeHandler('resize', this.again);
    this.gl.getExtension('WEBGL_lose_context')?.loseContext();
    this.canvas.remove();
    this.canvas.width = this.canvas.height = 1;
  }
}
