/**
 * The last pass: layers to the screen. One program for each way of combining them, compiled
 * when it is first used. Where the machine cannot follow a dragged control, the pass is made at
 * half the resolution into a picture of its own and enlarged.
 */
import { lampFragment } from '../../shaders/lamp.ts';
import { rangeFragment } from '../../shaders/range.ts';
import {
  differenceFragment,
  divideFragment,
  lookFragment,
  screenVertex,
  tiltFragment,
} from '../../shaders/sources.ts';
import { surfaceFragment } from '../../shaders/surface.ts';
import { layersOf, type Look } from '../look.ts';
import type { LayerStack } from './layer-stack.ts';
import { compile, type Program } from './program.ts';
import { SmallPicture } from './small-picture.ts';

/** Name and source of the program for a look. */
function sourceOf(look: Look): readonly [name: string, source: () => string] {
  switch (look.kind) {
    case 'single':
      return ['single', () => lookFragment];
    case 'divide':
      return ['divide', () => divideFragment];
    case 'tilt':
      return ['tilt', () => tiltFragment];
    case 'difference':
      return ['difference', () => differenceFragment];
    case 'lamp':
      return [`lamp ${look.planes} ${look.domain}`, () => lampFragment(look.planes, look.domain)];
    case 'surface':
      return [`surface ${look.rendering}`, () => surfaceFragment(look.rendering)];
    case 'range':
      return ['range', () => rangeFragment];
  }
}

export class LastPass {
  private readonly gl: WebGL2RenderingContext;
  private readonly programs = new Map<string, Program>();
  private readonly nothing: WebGLVertexArrayObject;
  private readonly small: SmallPicture;

  constructor(gl: WebGL2RenderingContext) {
    this.gl = gl;
    this.nothing = gl.createVertexArray();
    this.small = new SmallPicture(gl);
  }

  /** @param density Device pixels per CSS pixel. @param stride Layer pixels per drawn pixel. */
  draw(look: Look, layers: LayerStack, density: number, stride: 1 | 2): void {
    const gl = this.gl;
    const program = this.program(look);
    if (stride === 1) gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    else this.small.target(Math.ceil(layers.width / stride), Math.ceil(layers.height / stride));
    gl.viewport(0, 0, Math.ceil(layers.width / stride), Math.ceil(layers.height / stride));
    gl.disable(gl.BLEND);
    gl.useProgram(program.program);
    gl.bindVertexArray(this.nothing);
    for (let n = 0; n < layersOf(look); n++) {
      gl.activeTexture(gl.TEXTURE0 + n);
      gl.bindTexture(gl.TEXTURE_2D, layers.texture(n));
      gl.uniform1i(program.at(`layer${n}`), n);
    }
    gl.uniform1i(program.at('stride'), stride);
    this.values(look, program, layers.height, density);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
    gl.activeTexture(gl.TEXTURE0);
    if (stride !== 1) this.small.enlarge(layers.width, layers.height, stride);
  }

  private values(look: Look, program: Program, height: number, density: number): void {
    const gl = this.gl;
    const one = (name: string, value: number) => gl.uniform1f(program.at(name), value);
    if (look.kind === 'tilt') {
      one('a', look.a);
      one('b', look.b);
    } else if (look.kind === 'divide') {
      // CSS pixels run down, the framebuffer's rows run up.
      const { nx, ny, d } = look.line;
      gl.uniform3f(program.at('line'), nx, -ny, d * density - ny * height);
    } else if (look.kind === 'difference') {
      one('stretch', look.stretch);
    } else if (look.kind === 'lamp') {
      const { base, factors, planes } = look;
      gl.uniform3f(program.at('base'), base[0], base[1], base[2]);
      const values = Float32Array.from(
        { length: 3 * planes },
        (_, i) => factors[(i % 3) * planes + Math.floor(i / 3)],
      );
      gl.uniform3fv(program.at('factor'), values);
    } else if (look.kind === 'surface') {
      gl.uniform4fv(program.at('offset'), look.offset);
      gl.uniform4fv(program.at('unit'), look.step);
      gl.uniform3fv(program.at('light'), look.light);
      one('steepest', look.steepest);
    } else if (look.kind === 'range') {
      one('offset', look.offset);
      one('unit', look.step);
      one('offsetBase', look.offsetBase);
      one('offsetMerged', look.offsetMerged);
      one('weight', look.stops === null ? 0 : 1);
      one('exposure', 2 ** (look.stops ?? 0));
      one('white', look.white);
      one('clip', look.clip ?? 3e38);
      one('marks', look.marks ? 1 : 0);
    }
  }

  private program(look: Look): Program {
    const [name, source] = sourceOf(look);
    const known = this.programs.get(name);
    if (known) return known;
    const made = compile(this.gl, screenVertex, source());
    this.programs.set(name, made);
    return made;
  }
}
