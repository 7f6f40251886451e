/**
 * The programs that the viewer compiles: one that lays tiles into a linear-light layer, and one
 * for each way of combining layers. GLSL ES 3.00. Each combination has a CPU twin in
 * `src/imaging` that a browser test compares with it pixel by pixel.
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

/** One triangle that covers the screen, without a buffer. */
export const screenVertex = `#version 300 es
void main(){
  vec2 corner = vec2((gl_VertexID << 1) & 2, gl_VertexID & 2);
  gl_Position = vec4(corner * 2.0 - 1.0, 0.0, 1.0);
}`;

const head = `#version 300 es
precision highp float;
uniform sampler2D first, second;
out vec4 colour;
vec3 encode(vec3 v){
  v = clamp(v, 0.0, 1.0);
  vec3 curve = 1.055 * pow(max(v, vec3(1e-7)), vec3(1.0 / 2.4)) - 0.055;
  return mix(12.92 * v, curve, step(vec3(0.0031308), v));
}
void main(){
  ivec2 here = ivec2(gl_FragCoord.xy);
  vec4 A = texelFetch(first, here, 0);
`;

/** One picture as it is. */
export const lookFragment = `${head}  colour = vec4(encode(A.rgb) * A.a, A.a);
}`;

/** Two pictures with a line between them; twin: \`src/imaging/divide.ts\`. */
export const divideFragment = head.replace(
  'out vec4 colour;',
  'uniform vec3 line;\nout vec4 colour;',
).concat(`  vec4 B = texelFetch(second, here, 0);
  float share = clamp(dot(line.xy, gl_FragCoord.xy) - line.z + 0.5, 0.0, 1.0);
  float seen = mix(A.a, B.a, share);
  colour = vec4(encode(mix(A.rgb, B.rgb, share)) * seen, seen);
}`);

/** a P + b N, brought to the eye's level; twin: \`src/imaging/tilt.ts\`. */
export const tiltFragment = head.replace(
  'out vec4 colour;',
  'uniform float a, b;\nout vec4 colour;',
).concat(`  vec4 B = texelFetch(second, here, 0);
  // A picture whose tiles have not come yet leaves the other one alone, not darkness.
  vec3 sum = A.a <= 0.0 ? B.rgb : B.a <= 0.0 ? A.rgb : (a * A.rgb + b * B.rgb) / (a + b);
  float seen = max(A.a, B.a);
  colour = vec4(encode(sum) * seen, seen);
}`);
