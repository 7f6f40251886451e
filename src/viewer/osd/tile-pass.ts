/**
 * The pass that lays tiles into layers, coarse ones first: pictures blended in linear light,
 * data planes four to a layer and not blended.
 */
import OpenSeadragon from 'openseadragon';
import { planesFragment, tileFragment, tileVertex } from '../../shaders/sources.ts';
import { compile, type Program } from './program.ts';
import { overlapOf, type TileTexture } from './tile-textures.ts';

/** The library's 3 x 3 matrices, column-major; its type file knows only part of them. */
interface Matrix {
  readonly values: Float32List;
  multiply(other: Matrix): Matrix;
  scaleAndTranslateOtherSetSelf(other: Matrix): void;
}
interface MatrixMaker {
  new (values: number[]): Matrix;
  makeScaling(x: number, y: number): Matrix;
  makeRotation(radians: number): Matrix;
  makeTranslation(x: number, y: number): Matrix;
}
const matrices = (OpenSeadragon as unknown as { Mat3: MatrixMaker }).Mat3;

/** What is in sight as a matrix from viewport units to clip space. */
function viewMatrix(viewport: OpenSeadragon.Viewport): Matrix {
  const bounds = viewport.getBoundsNoRotateWithMargins(true);
  const flip = viewport.getFlip() ? -1 : 1;
  return matrices
    .makeScaling((2 / bounds.width) * flip, -2 / bounds.height)
    .multiply(matrices.makeRotation((-viewport.getRotation(true) * Math.PI) / 180))
    .multiply(
      matrices.makeTranslation(-(bounds.x + bounds.width / 2), -(bounds.y + bounds.height / 2)),
    );
}

/** The rectangle of a tile in viewport units, without its overlap. */
function tileRectangle(
  tile: OpenSeadragon.Tile,
): readonly [x: number, y: number, w: number, h: number] {
  const bounds = tile.positionedBounds;
  const [left, top, right, bottom] = overlapOf(tile);
  const kx = bounds.width / tile.sourceBounds.width;
  const ky = bounds.height / tile.sourceBounds.height;
  return [
    bounds.x + left * kx,
    bounds.y + top * ky,
    bounds.width - (left + right) * kx,
    bounds.height - (top + bottom) * ky,
  ];
}

export class TilePass {
  private readonly gl: WebGL2RenderingContext;
  private readonly pictures: Program;
  private planes: Program | null = null;
  private readonly square: WebGLVertexArrayObject;
  private view: Matrix | null = null;

  constructor(gl: WebGL2RenderingContext) {
    this.gl = gl;
    this.pictures = compile(gl, tileVertex, tileFragment);
    this.square = gl.createVertexArray();
    gl.bindVertexArray(this.square);
    gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
    gl.bufferData(gl.ARRAY_BUFFER, new Float32Array([0, 0, 1, 0, 0, 1, 1, 1]), gl.STATIC_DRAW);
    gl.enableVertexAttribArray(0);
    gl.vertexAttribPointer(0, 2, gl.FLOAT, false, 0, 0);
  }

  begin(viewport: OpenSeadragon.Viewport, width: number, height: number): void {
    const gl = this.gl;
    this.view = viewMatrix(viewport);
    gl.bindVertexArray(this.square);
    gl.viewport(0, 0, width, height);
    gl.activeTexture(gl.TEXTURE0);
  }

  draw(tile: OpenSeadragon.Tile, texture: TileTexture): void {
    const gl = this.gl;
    const program = this.pictures;
    gl.useProgram(program.program);
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.bindTexture(gl.TEXTURE_2D, texture.texture);
    gl.uniform1i(program.at('tile'), 0);
    gl.uniform1f(program.at('opacity'), tile.opacity ?? 1);
    this.lay(program, tile, texture);
  }

  /** @param from The first of the four planes to lay. */
  drawPlanes(tile: OpenSeadragon.Tile, texture: TileTexture, from: number): void {
    const gl = this.gl;
    this.planes ??= compile(gl, tileVertex, planesFragment);
    const program = this.planes;
    gl.useProgram(program.program);
    gl.disable(gl.BLEND);
    gl.bindTexture(gl.TEXTURE_2D_ARRAY, texture.texture);
    gl.uniform1i(program.at('planes'), 0);
    gl.uniform1i(program.at('from'), from);
    gl.uniform1i(program.at('count'), texture.planes);
    this.lay(program, tile, texture);
  }

  private lay(program: Program, tile: OpenSeadragon.Tile, texture: TileTexture): void {
    if (this.view === null) return;
    const gl = this.gl;
    const [x, y, w, h] = tileRectangle(tile);
    const place = new matrices([w, 0, 0, 0, h, 0, x, y, 1]);
    place.scaleAndTranslateOtherSetSelf(this.view);
    gl.uniformMatrix3fv(program.at('place'), false, place.values);
    gl.uniform4fv(program.at('cut'), texture.cut);
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
  }
}
