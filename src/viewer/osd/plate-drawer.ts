/**
 * Draws each picture of the deep zoom library into its own linear-light layer the size of the
 * screen, then combines the layers in one last pass. Moving a control repeats that pass alone:
 * no tile is asked for, no tile is drawn again.
 *
 * Layers of pictures are SRGB8_ALPHA8: the hardware decodes on reading and encodes on writing, so
 * sampling, blending and combining happen in linear light at half the memory of floating point.
 * Data planes lie four to a layer of RGBA8, unconverted.
 */
import OpenSeadragon from 'openseadragon';
import { layersForPlanes, layersOf, type Look } from '../look.ts';
import { LayerStack, type LayerKind } from './layer-stack.ts';
import { LastPass } from './last-pass.ts';
import { Pace } from './pace.ts';
import { planesOf, TileTextures, type TileTexture } from './tile-textures.ts';
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
  private pace!: Pace;
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
      this.finish(this.pace.step());
      this.pace.drawn();
    });
  }

  override internalCacheCreate(cache: { data: unknown }, tile: OpenSeadragon.Tile) {
    if (this.lost) return undefined;
    this.counts.uploads++;
    return this.textures.make(cache.data as ImageBitmap, tile);
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
    const kinds = shown.flatMap((item): LayerKind[] => {
      const planes = planesOf(item);
      return planes === 0
        ? ['picture']
        : Array.from({ length: layersForPlanes(planes) }, () => 'data' as const);
    });
    this.layers.fit(kinds.length > 0 ? kinds : ['picture'], size.x, size.y);
    this.tiles.begin(this.viewport, size.x, size.y);
    let layer = 0;
    for (const item of shown) {
      const ready = (tiles.get(item) ?? []).flatMap(({ tile }) => {
        const texture = this.getDataToDraw(tile) as TileTexture | undefined;
        return texture !== undefined && this.textures.has(texture) ? [{ tile, texture }] : [];
      });
      const planes = planesOf(item);
      for (let from = 0; from < Math.max(1, planes + 1); from += 4) {
        this.layers.target(layer++);
        for (const { tile, texture } of ready) {
          if (planes > 0) this.tiles.drawPlanes(tile, texture, from);
          else this.tiles.draw(tile, texture);
        }
        if (planes === 0) break;
      }
    }
    this.finish();
  }

  /** The last pass. */
  private finish(stride: 1 | 2 = 1): void {
    if (this.lost || this.gone || !this.layers.ready) return;
    this.counts.lastPasses++;
    const enough = this.layers.count >= layersOf(this.look);
    const look: Look = enough ? this.look : { kind: 'single' };
    this.last.draw(look, this.layers, this.density(), stride);
  }

  /** Device pixels per CSS pixel of this canvas. */
  private density(): number {
    return this.canvas.width / Math.max(1, this.viewport.getContainerSize().x);
  }

  /** Combine now and read pixels back, RGBA from the top row down. For tests and the bench. */
  read(x: number, y: number, width: number, height: number): Uint8Array {
    this.finish();
    return this.rows(x, y, width, height);
  }

  /** How many layers have been drawn. */
  get drawn(): number {
    return this.lost || this.gone ? 0 : this.layers.count;
  }

  /** One layer's codes, RGBA from the top row down. */
  readLayer(n: number, x: number, y: number, width: number, height: number): Uint8Array {
    this.layers.source(n);
    return this.rows(x, y, width, height);
  }

  private rows(x: number, y: number, width: number, height: number): Uint8Array {
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
    this.pace = new Pace(this.gl, () => this.finish());
  }

  override destroy(): void {
    this.gone = true;
    cancelAnimationFrame(this.pending);
    this.pace.stop();
    super.destroy();
    this.viewer.removeHandler('resize', this.again);
    this.gl.getExtension('WEBGL_lose_context')?.loseContext();
    this.canvas.remove();
    this.canvas.width = this.canvas.height = 1;
  }
}
