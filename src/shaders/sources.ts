/**
 * The programs that lay tiles into layers, and the last passes for pictures alone. GLSL ES 3.00.
 * Each combination has a CPU twin in `src/imaging` that a browser test compares with it pixel by
 * pixel. The last passes over data planes are in `lamp.ts`, `surface.ts` and `range.ts`.
 *
 * References
 * - The OpenGL ES Shading Language 3.00; OpenGL ES 3.0.6, section 3.8.16 and 4.1.8: textures and
 *   framebuffers in SRGB8_ALPHA8 are decoded before filtering and encoded after blending.
 * - IEC 61966-2-1:1999 for the transfer curve.
 */

/** Place one tile: a unit square through a matrix, texture coordinates within the tile. */
export const tileVertex = `#version 300 es
layout(location=0) in vec2 corner;
uniform mat3 place;
uniform vec4 cut;
out vec2 at;
void main(){
  at = mix(cut.xy, cut.zw, corner);
  gl_Position = vec4((place * vec3(corner, 1.0)).xy, 0.0, 1.0);
}`;

/** Alpha is coverage: how much of the layer's pixel a tile has reached so far. */
export const tileFragment = `#version 300 es
precision highp float;
in vec2 at;
uniform sampler2D tile;
uniform float opacity;
out vec4 colour;
void main(){ colour = vec4(texture(tile, at).rgb * opacity, opacity); }`;

/**
 * Four data planes of a tile side by side in one layer; the place after the last plane is 1
 * where a tile has been laid. Not blended: a finer tile replaces a coarser one.
 */
export const planesFragment = `#version 300 es
precision highp float;
precision highp sampler2DArray;
in vec2 at;
uniform sampler2DArray planes;
uniform int from, count;
out vec4 colour;
float plane(int n){ return n < count ? texture(planes, vec3(at, float(n))).r : 1.0; }
void main(){ colour = vec4(plane(from), plane(from + 1), plane(from + 2), plane(from + 3)); }`;

/** One triangle that covers the screen, without a buffer. */
export const screenVertex = `#version 300 es
void main(){
  vec2 corner = vec2((gl_VertexID << 1) & 2, gl_VertexID & 2);
  gl_Position = vec4(corner * 2.0 - 1.0, 0.0, 1.0);
}`;

/**
 * Begins every last pass. Layers are as large as the screen; `stride` is 1, or more while a
 * control is dragged on a machine that cannot follow at full resolution.
 */
export function lastHead(uniforms: string): string {
  return `#version 300 es
precision highp float;
uniform int stride;
${uniforms}
out vec4 colour;
vec3 encode(vec3 v){
  v = clamp(v, 0.0, 1.0);
  vec3 curve = 1.055 * pow(max(v, vec3(1e-7)), vec3(1.0 / 2.4)) - 0.055;
  return mix(12.92 * v, curve, step(vec3(0.0031308), v));
}
void main(){
  ivec2 here = ivec2(gl_FragCoord.xy) * stride;
`;
}

const pictures = 'uniform sampler2D layer0, layer1;';
const first = '  vec4 A = texelFetch(layer0, here, 0);\n';
const second = '  vec4 B = texelFetch(layer1, here, 0);\n';

/** One picture as it is. */
export const lookFragment = `${lastHead(pictures)}${first}  colour = vec4(encode(A.rgb) * A.a, A.a);
}`;

/** Two pictures with a line between them; twin: \`src/imaging/divide.ts\`. */
export const divideFragment = `${lastHead(`${pictures}\nuniform vec3 line;`)}${first}${second}  vec2 centre = vec2(here) + 0.5;
  float share = clamp(dot(line.xy, centre) - line.z + 0.5, 0.0, 1.0);
  float seen = mix(A.a, B.a, share);
  colour = vec4(encode(mix(A.rgb, B.rgb, share)) * seen, seen);
}`;

/** a P + b N, brought to the eye's level; twin: \`src/imaging/tilt.ts\`. */
export const tiltFragment = `${lastHead(`${pictures}\nuniform float a, b;`)}${first}${second}  // A picture whose tiles have not come yet leaves the other one alone, not darkness.
  vec3 sum = A.a <= 0.0 ? B.rgb : B.a <= 0.0 ? A.rgb : (a * A.rgb + b * B.rgb) / (a + b);
  float seen = max(A.a, B.a);
  colour = vec4(encode(sum) * seen, seen);
}`;

/** What has become lighter or darker; twin: \`src/imaging/difference.ts\`. */
export const differenceFragment = `${lastHead(`${pictures}\nuniform float stretch;`)}${first}${second}  const vec3 luminance = vec3(0.2126, 0.7152, 0.0722);
  float step = encode(vec3(dot(luminance, B.rgb))).r - encode(vec3(dot(luminance, A.rgb))).r;
  float seen = min(A.a, B.a);
  colour = vec4(vec3(clamp(0.5 + stretch * step, 0.0, 1.0)) * seen, seen);
}`;
