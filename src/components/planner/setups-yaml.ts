/** The planned set-ups as `sitting.yaml` has them, written by hand so that a browser can too. */
import type { Plan } from '../../optics/plan/plan.ts';

const rounded = (value: number) => String(Math.round(value * 100) / 100);

export function setupsYaml({ setups }: Pick<Plan, 'setups'>): string {
  const lines = Object.entries(setups).flatMap(([name, { kind, surround, lamps, glass }]) => [
    `  ${name}:`,
    `    kind: ${kind}`,
    `    surround: ${surround}`,
    ...(glass ? [`    glass: ${flow(glass)}`] : []),
    '    lamps:',
    ...lamps.map((lamp) => `      - ${flow(lamp)}`),
  ]);
  return `setups:\n${lines.join('\n')}\n`;
}

function flow(fields: Readonly<Record<string, number>>): string {
  const parts = Object.entries(fields).map(([key, value]) => `${key}: ${rounded(value)}`);
  return `{ ${parts.join(', ')} }`;
}
