/**
 * A {@link Surface} drawn by OpenSeadragon, with its own buttons, flip key and page keys put
 * aside: the stage has controls of its own.
 */
import OpenSeadragon from 'openseadragon';
import type { Look } from '../look.ts';
import { fromViewport, placingOf, shapedAs, toViewport, type Placing } from '../placing.ts';
import type { Link, Surface, SurfaceEvents, SurfaceView } from '../surface.ts';
import type { Region } from '../view-state.ts';
import { learnPlainBitmap } from './plain-bitmap.ts';
import { layPlain } from './plain-look.ts';
import { keepStylesOut, libraryOptions } from './library-options.ts';
import { PlateDrawer } from './plate-drawer.ts';
import { pictureSource, planeSource, tileSource } from './tile-source.ts';
import { words } from '../words.ts';

/** Keys that the library may keep; letters and page keys are put aside. */
const kept = new Set(['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'Equal', 'Minus']);

export class LibrarySurface implements Surface {
  readonly element: HTMLElement;
  private readonly viewer: OpenSeadragon.Viewer;
  private readonly items = new Map<string, Promise<OpenSeadragon.TiledImage>>();
  private shown: readonly SurfaceView[] = [];
  private shownItems: readonly OpenSeadragon.TiledImage[] = [];
  private current: Look = { kind: 'single' };

  constructor(element: HTMLElement, name: string, events: SurfaceEvents) {
    learnPlainBitmap();
    keepStylesOut();
    this.element = element;
    this.viewer = OpenSeadragon(libraryOptions(element));
    const canvas = this.viewer.canvas;
    canvas.setAttribute('role', 'application');
    canvas.setAttribute('aria-label', name);
    this.listen(events);
  }

  private listen(events: SurfaceEvents): void {
    const viewer = this.viewer;
    viewer.addHandler('viewport-change', () => events.moved());
    viewer.addHandler('resize', () => events.resized());
    viewer.addHandler('animation-finish', () => events.rested());
    viewer.addHandler('canvas-drag', (event) => {
      event.preventDefaultAction = events.dragged(event.delta.x, event.delta.y);
    });
    viewer.addHandler('canvas-drag-end', (event) => {
      event.preventDefaultAction = events.dragged(0, 0);
    });
    viewer.addHandler('canvas-click', (event) => {
      if (event.quick)
        event.preventDefaultAction = events.pressed(event.position.x, event.position.y);
    });
    viewer.addHandler('canvas-key', (event) => {
      const key = event.originalEvent;
      const used = events.key(key);
      event.preventDefaultAction = used || !kept.has(key.code);
    });
    this.viewer.element.addEventListener(
      'webglcontextlost',
      () => setTimeout(() => this.replaceWhenGone(events), 3000),
      true,
    );
  }

  /** The context did not come back: let the plain drawer take over, with the tiles it has. */
  private replaceWhenGone(events: SurfaceEvents): void {
    const drawer = this.viewer.drawer as unknown;
    if (!(drawer instanceof PlateDrawer)) return;
    const gl = drawer.canvas.getContext('webgl2');
    if (gl === null || !gl.isContextLost()) return;
    const viewer = this.viewer as unknown as {
      requestDrawer(name: string, how: object): void;
      world: { requestInvalidate(restore: boolean): void };
    };
    viewer.requestDrawer('canvas', { mainDrawer: true, redrawImmediately: false });
    viewer.world.requestInvalidate(true);
    this.look(this.current);
    events.plain();
  }

  private get drawer(): PlateDrawer | null {
    const drawer = this.viewer.drawer as unknown;
    return drawer instanceof PlateDrawer ? drawer : null;
  }

  get physical(): boolean {
    return this.drawer !== null;
  }

  async show(views: readonly SurfaceView[], look: Look): Promise<void> {
    this.shown = views;
    const items = await Promise.all(views.map((view) => this.item(view)));
    if (this.shown !== views) return; // another request came while this one was loading
    this.shownItems = items;
    const world = this.viewer.world;
    for (let i = 0; i < world.getItemCount(); i++) {
      const item = world.getItemAt(i);
      item.setOpacity(items.includes(item) ? 1 : 0);
    }
    items.forEach((item, n) => world.setItemIndex(item, n));
    this.drawer?.setOrder(items);
    this.look(look);
    this.viewer.forceRedraw();
  }

  get complete(): boolean {
    return this.shownItems.length > 0 && this.shownItems.every((item) => item.getFullyLoaded());
  }

  layerCodes(count: number): Uint8Array[] | null {
    const { drawer } = this;
    if (drawer === null || drawer.drawn < count) return null;
    const { width, height } = drawer.canvas;
    return Array.from({ length: count }, (_, n) => drawer.readLayer(n, 0, 0, width, height));
  }

  private item(view: SurfaceView): Promise<OpenSeadragon.TiledImage> {
    const known = this.items.get(view.id);
    if (known) return known;
    const source = view.picture
      ? Promise.resolve(pictureSource(view.picture))
      : view.data
        ? Promise.resolve(planeSource(view.data))
        : tileSource(view.service);
    const made = source.then(
      (source) =>
        new Promise<OpenSeadragon.TiledImage>((resolve, reject) => {
          this.viewer.addTiledImage({
            tileSource: source,
            x: 0,
            y: 0,
            width: 1,
            opacity: 0,
            success: (event: unknown) =>
              resolve((event as { item: OpenSeadragon.TiledImage }).item),
            error: () => reject(new Error(words.faults.pictures)),
          });
        }),
    );
    this.items.set(view.id, made);
    made.catch(() => this.items.delete(view.id));
    return made;
  }

  look(look: Look): void {
    this.current = look;
    const drawer = this.drawer;
    if (drawer) drawer.setLook(look);
    else layPlain(look, this.shownItems, this.placing());
  }

  private get frame(): SurfaceView {
    return this.shown[0] ?? { id: '', service: '', width: 1, height: 1 };
  }

  region(): Region {
    return fromViewport(this.viewer.viewport.getBounds(true), this.frame.width);
  }

  placing(): Placing {
    const viewport = this.viewer.viewport;
    const size = viewport.getContainerSize();
    const box = { width: size.x, height: size.y };
    return placingOf(viewport.getBounds(true), box, this.frame.width, viewport.getFlip());
  }

  fit(region: Region | null, atOnce: boolean): void {
    const { width, height } = this.frame;
    const box = this.viewer.viewport.getContainerSize();
    const shaped =
      region === null ? { x: 0, y: 0, width, height } : shapedAs(region, box.x / box.y);
    const wanted = toViewport(shaped, width);
    this.viewer.viewport.fitBounds(
      new OpenSeadragon.Rect(wanted.x, wanted.y, wanted.width, wanted.height),
      atOnce,
    );
  }

  zoom(factor: number): void {
    this.viewer.viewport.zoomBy(factor);
    this.viewer.viewport.applyConstraints();
  }

  pan(dx: number, dy: number): void {
    const viewport = this.viewer.viewport;
    const across = viewport.getFlip() ? -dx : dx;
    viewport.panBy(viewport.deltaPointsFromPixels(new OpenSeadragon.Point(across, dy)));
    viewport.applyConstraints();
  }

  mirror(on: boolean): void {
    this.viewer.viewport.setFlip(on);
  }

  follow(other: Surface, link?: Link): void {
    if (!(other instanceof LibrarySurface)) return;
    const theirs = link ? this.corresponding(other, link) : other.viewer.viewport.getBounds(true);
    const mine = this.viewer.viewport.getBounds(true);
    const apart = (['x', 'y', 'width', 'height'] as const).some(
      (side) => Math.abs(theirs[side] - mine[side]) > 1e-9,
    );
    if (apart) this.viewer.viewport.fitBounds(theirs, true);
  }

  /** What of this surface's picture is as large and lies as the other surface shows its own. */
  private corresponding(other: LibrarySurface, link: Link): OpenSeadragon.Rect {
    const seen = other.region();
    const x = link.mine[0] + (seen.x - link.theirs[0]) * link.ratio;
    const y = link.mine[1] + (seen.y - link.theirs[1]) * link.ratio;
    const region = { x, y, width: seen.width * link.ratio, height: seen.height * link.ratio };
    const wanted = toViewport(region, this.frame.width);
    return new OpenSeadragon.Rect(wanted.x, wanted.y, wanted.width, wanted.height);
  }

  close(): void {
    this.viewer.destroy();
  }
}
