/**
 * The last pass of Lamp: base and factors of the lamp's direction over the codes of the planes;
 * twin: `src/imaging/relight/lamp-light.ts`. Compiled for the number of planes at hand.
 */
import type { Domain } from '../imaging/relight/light-domain.ts';
import { lastHead } from './sources.ts';

const part = ['r', 'g', 'b', 'a'];

/** From the sum to a display code; twin: `src/imaging/relight/light-domain.ts`. */
const back: Record<Domain, string> = {
  encoded: '',
  log: '  v = exp(v) - 4.0;\n',
  power: '  v = 271.0 * pow(max(v, 0.0) / 255.0, vec3(1.0 / 1.45)) - 16.0;\n',
};

export function lampFragment(planes: number, domain: Domain): string {
  const layers = Math.ceil((planes + 1) / 4);
  const names = Array.from({ length: layers }, (_, n) => `layer${n}`);
  const reads = names.map((name, n) => `  vec4 P${n} = texelFetch(${name}, here, 0);`);
  const sum = Array.from(
    { length: planes },
    (_, k) => `  v += factor[${k}] * (255.0 * P${k >> 2}.${part[k & 3]});`,
  );
  const seen = `P${planes >> 2}.${part[planes & 3]}`;
  const end = back[domain];
  return `${lastHead(`uniform sampler2D ${names.join(', ')};\nuniform vec3 base;\nuniform vec3 factor[${planes}];`)}${reads.join('\n')}
  vec3 v = base;
${sum.join('\n')}
${end}  float seen = ${seen};
  colour = vec4(clamp(v / 255.0, 0.0, 1.0) * seen, seen);
}`;
}
