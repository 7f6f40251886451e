/** Compiling a shader program, with the compiler's own words when it refuses. */

export interface Program {
  readonly program: WebGLProgram;
  at(name: string): WebGLUniformLocation | null;
}

export function compile(gl: WebGL2RenderingContext, vertex: string, fragment: string): Program {
  const program = gl.createProgram();
  const parts = [
    [gl.VERTEX_SHADER, vertex],
    [gl.FRAGMENT_SHADER, fragment],
  ] as const;
  for (const [kind, source] of parts) {
    const shader = gl.createShader(kind);
    if (shader === null) break; // the context is lost; linking reports nothing then
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
    gl.deleteShader(shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS) && !gl.isContextLost())
      throw new Error(`A shader was refused: ${gl.getShaderInfoLog(shader) ?? 'no reason given'}`);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost())
    throw new Error(`A program was refused: ${gl.getProgramInfoLog(program) ?? 'no reason given'}`);
  const places = new Map<string, WebGLUniformLocation | null>();
  return {
    program,
    at(name) {
      if (!places.has(name)) places.set(name, gl.getUniformLocation(program, name));
      return places.get(name) ?? null;
    },
  };
}
