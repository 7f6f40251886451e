/**
 * The last pass of Range: the merged light behind a rendering at an exposure and a white point;
 * twin: `src/imaging/wide-range.ts`. Plane 0 is the gain, 1 and 2 where no frame holds the light.
 */
import { lastHead } from './sources.ts';

export const rangeFragment = `${lastHead(`uniform sampler2D layer0, layer1;
uniform float offset, unit, offsetBase, offsetMerged, exposure, white, clip, marks, weight;`)}  vec4 B = texelFetch(layer0, here, 0);
  vec4 planes = texelFetch(layer1, here, 0);
  float gain = offset + unit * (255.0 * planes.r);
  vec3 light = (B.rgb + offsetBase) * exp2(gain * weight) - offsetMerged * weight - offsetBase * (1.0 - weight);
  vec3 shown = encode(min(light * exposure, vec3(clip)) / white);
  vec2 unknown = planes.gb * marks;
  shown = mix(shown, vec3(0.86, 0.55, 0.2), unknown.x);
  shown = mix(shown, vec3(0.25, 0.5, 0.8), unknown.y);
  // Where only the rendering has come yet, it stands in.
  shown = mix(encode(B.rgb), shown, planes.a);
  colour = vec4(shown * B.a, B.a);
}`;
