/** A picture smaller than the screen, drawn first and then enlarged onto it. */
export class SmallPicture {
  private readonly gl: WebGL2RenderingContext;
  private texture: WebGLTexture | null = null;
  private frame: WebGLFramebuffer | null = null;
  private width = 0;
  private height = 0;

  constructor(gl: WebGL2RenderingContext) {
    this.gl = gl;
  }

  /** Draw into it from here on. */
  target(width: number, height: number): void {
    const gl = this.gl;
    this.frame ??= gl.createFramebuffer();
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.frame);
    if (this.texture !== null && width === this.width && height === this.height) return;
    gl.deleteTexture(this.texture);
    this.texture = gl.createTexture();
    gl.bindTexture(gl.TEXTURE_2D, this.texture);
    gl.texStorage2D(gl.TEXTURE_2D, 1, gl.RGBA8, width, height);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, this.texture, 0);
    this.width = width;
    this.height = height;
  }

  /** Onto the screen of this size. */
  enlarge(width: number, height: number, stride: number): void {
    const gl = this.gl;
    const [w, h] = [this.width * stride, this.height * stride];
    gl.bindFramebuffer(gl.READ_FRAMEBUFFER, this.frame);
    gl.bindFramebuffer(gl.DRAW_FRAMEBUFFER, null);
    gl.viewport(0, 0, width, height);
    gl.blitFramebuffer(0, 0, this.width, this.height, 0, 0, w, h, gl.COLOR_BUFFER_BIT, gl.LINEAR);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
  }
}
