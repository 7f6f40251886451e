/** Findings as lines for a terminal: where, what, and what to do. */
import type { Finding } from '../records/finding.ts';
import { printable } from '../records/printable.ts';

/** `error  harbour, capture normal, captures/normal.tif, line 3: sentence` and the remedy below. */
export function formatFindings(findings: readonly Finding[]): string {
  return findings.map(formatFinding).join('\n');
}

export function formatFinding(finding: Finding): string {
  const { level, plate, capture, file, line, message, remedy } = finding;
  const where = [
    plate === '' ? 'collection' : `plate "${plate}"`,
    ...(capture === null ? [] : [`capture "${capture}"`]),
    ...(file === null ? [] : [line === null ? file : `${file} line ${line}`]),
  ].join(', ');
  return printable(`${level.padEnd(7)} ${where}: ${message}\n        ${remedy}`);
}
