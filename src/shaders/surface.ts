/** The last passes of the surface alone; twin: `src/imaging/surface-picture.ts`. */
import type { SurfaceRendering } from '../viewer/look.ts';
import { lastHead } from './sources.ts';

const uniforms = `uniform sampler2D layer0, layer1;
uniform vec4 offset, unit;
uniform vec3 light;
uniform float steepest;`;

const read = `  vec4 plane = offset + unit * (255.0 * texelFetch(layer0, here, 0));
  float seen = texelFetch(layer1, here, 0).r;
  vec3 normal = normalize(vec3(-plane.xy * (0.6 / steepest), 1.0));
`;

const bodies: Readonly<Record<SurfaceRendering, string>> = {
  relief: `  float lit = max(dot(normal, light), 0.0) / max(light.z, 0.1);
  float grey = encode(vec3(0.2 * lit)).r;
`,
  slope: `  vec2 towards = light.xy / max(length(light.xy), 1e-4);
  float grey = clamp(0.5 - 0.5 * dot(plane.xy, towards) / steepest, 0.0, 1.0);
`,
  gloss: `  vec3 half3 = normalize(light + vec3(0.0, 0.0, 1.0));
  float code = clamp(plane.z, 0.0, 1.0);
  float gloss = code <= 0.04045 ? code / 12.92 : pow((code + 0.055) / 1.055, 2.4);
  float grey = encode(vec3(gloss * pow(max(dot(normal, half3), 0.0) / half3.z, 8.0))).r;
`,
};

export function surfaceFragment(rendering: SurfaceRendering): string {
  return `${lastHead(uniforms)}${read}${bodies[rendering]}  colour = vec4(vec3(grey) * seen, seen);
}`;
}
