/** What was measured of each capture, as lines for a terminal: the figures of the captures page. */
import type { Inspection } from '../../records/inspection.ts';
import type { Registration } from '../../records/result.ts';
import { said } from './inspected-sitting.ts';

/** One block of lines per capture; empty where nothing was measured. */
export function measuredTable(
  inspections: Readonly<Record<string, Inspection | null>>,
  registrations: Readonly<Record<string, Registration>>,
): string {
  const ids = [...new Set([...Object.keys(inspections), ...Object.keys(registrations)])];
  return ids
    .flatMap((id) => {
      const lines = [...figures(inspections[id] ?? null), ...register(registrations[id])];
      return lines.length === 0 ? [] : [`  ${id}`, ...columns(lines)];
    })
    .join('\n');
}

type Line = readonly [label: string, value: string, standing: string];

function figures(inspection: Inspection | null): Line[] {
  return (inspection?.measurements ?? []).map((m) => {
    const doubt = m.uncertainty === null ? '' : ` ± ${said(m.uncertainty)}`;
    const table = m.edition === null ? '' : ` [${m.edition}]`;
    return [m.label, `${said(m.value)}${doubt} ${m.unit}`.trim(), `${m.standing ?? ''}${table}`];
  });
}

function register(registration: Registration | undefined): Line[] {
  if (registration?.state !== 'registered') return [];
  const { boundPixels, boundMicrometres, tilesAgreed, tilesTried } = registration;
  const length = boundMicrometres === null ? '' : `, ${said(boundMicrometres)} µm`;
  return [
    [
      'Register with the base',
      `within ${said(boundPixels)} px${length}`,
      `${tilesAgreed} of ${tilesTried} patches agreed`,
    ],
  ];
}

function columns(lines: readonly Line[]): string[] {
  const widest = (k: 0 | 1) => Math.max(...lines.map((line) => line[k].length));
  const [first, second] = [widest(0), widest(1)];
  return lines.map(([label, value, standing]) =>
    `    ${label.padEnd(first)}  ${value.padEnd(second)}  ${standing}`.trimEnd(),
  );
}
