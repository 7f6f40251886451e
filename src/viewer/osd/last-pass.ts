/** The last pass: layers to the screen, one program for each way of combining them. */
import { divideFragment, lookFragment, screenVertex, tiltFragment } from '../../shaders/sources.ts';
import type { Look } from '../look.ts';
import type { LayerStack } from './layer-stack.ts';
import { compile, type Program } from './program.ts';

const fragments: Readonly<Record<Look['kind'], string>> = {
  single: lookFragment,
  divide: divideFragment,
  tilt: tiltFragment,
};

export class LastPass {
  private readonly gl: WebGL2RenderingContext;
  private readonly programs = new Map<Look['kind'], Program>();
  private readonly nothing: WebGLVertexArrayObject;

  constructor(gl: WebGL2RenderingContext) {
    this.gl = gl;
    this.nothing = gl.createVertexArray();
  }

  /** @param density Device pixels per CSS pixel. */
  draw(look: Look, layers: LayerStack, density: number): void {
    const gl = this.gl;
    const program = this.program(look.kind);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.viewport(0, 0, layers.width, layers.height);
    gl.disable(gl.BLEND);
    gl.useProgram(program.program);
    gl.bindVertexArray(this.nothing);
    ['first', 'second'].forEach((name, n) => {
      gl.activeTexture(gl.TEXTURE0 + n);
      gl.bindTexture(gl.TEXTURE_2D, layers.texture(n));
      gl.uniform1i(program.at(name), n);
    });
    this.values(look, program, layers.height, density);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
    gl.activeTexture(gl.TEXTURE0);
  }

  private values(look: Look, program: Program, height: number, density: number): void {
    const gl = this.gl;
    if (look.kind === 'tilt') {
      gl.uniform1f(program.at('a'), look.a);
      gl.uniform1f(program.at('b'), look.b);
    } else if (look.kind === 'divide') {
      // CSS pixels run down, the framebuffer's rows run up.
      const { nx, ny, d } = look.line;
      gl.uniform3f(program.at('line'), nx, -ny, d * density - ny * height);
    }
  }

  private program(kind: Look['kind']): Program {
    const known = this.programs.get(kind);
    if (known) return known;
    const made = compile(this.gl, screenVertex, fragments[kind]);
    this.programs.set(kind, made);
    return made;
  }
}
