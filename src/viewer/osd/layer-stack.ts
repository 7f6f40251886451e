/**
 * The layers: textures the size of the screen, in linear light for a picture, plain numbers for
 * data planes (four planes to a layer).
 */

/** What a layer holds. */
export type LayerKind = 'picture' | 'data';

interface Layer {
  readonly kind: LayerKind;
  readonly texture: WebGLTexture;
  readonly frame: WebGLFramebuffer;
}

export class LayerStack {
  width = 0;
  height = 0;
  private readonly gl: WebGL2RenderingContext;
  private layers: Layer[] = [];

  constructor(gl: WebGL2RenderingContext) {
    this.gl = gl;
  }

  get ready(): boolean {
    return this.layers.length > 0;
  }

  get count(): number {
    return this.layers.length;
  }

  /** Exactly these layers of this size, device pixels. */
  fit(kinds: readonly LayerKind[], width: number, height: number): void {
    if (width !== this.width || height !== this.height) this.drop(0);
    this.width = width;
    this.height = height;
    const kept = this.layers.findIndex((layer, n) => layer.kind !== kinds[n]);
    if (kept >= 0) this.drop(kept);
    for (const kind of kinds.slice(this.layers.length)) this.layers.push(this.make(kind));
  }

  /** Draw into a layer from here on, cleared to nothing. */
  target(index: number): void {
    const gl = this.gl;
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.layers[index].frame);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT);
  }

  texture(index: number): WebGLTexture {
    return this.layers[Math.min(index, this.layers.length - 1)].texture;
  }

  /** Read from a layer from here on. */
  source(index: number): void {
    this.gl.bindFramebuffer(this.gl.FRAMEBUFFER, this.layers[index].frame);
  }

  private drop(from: number): void {
    for (const layer of this.layers.splice(from)) {
      this.gl.deleteTexture(layer.texture);
      this.gl.deleteFramebuffer(layer.frame);
    }
  }

  private make(kind: LayerKind): Layer {
    const gl = this.gl;
    const texture = gl.createTexture();
    const frame = gl.createFramebuffer();
    const format = kind === 'picture' ? gl.SRGB8_ALPHA8 : gl.RGBA8;
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texStorage2D(gl.TEXTURE_2D, 1, format, this.width, this.height);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
    gl.bindFramebuffer(gl.FRAMEBUFFER, frame);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT);
    return { kind, texture, frame };
  }
}
