/** A finding as one line of text: where, what, what to do. */
import type { Finding } from './finding.ts';

/** Where a finding is: `plate "harbour", plate.md line 12, column 3`. */
export function findingPlace({ plate, file, line, column, capture }: Finding): string {
  const at = line === null ? '' : ` line ${line}` + (column ? `, column ${column}` : '');
  const parts = [
    plate === '' ? '' : `plate "${plate}"`,
    file === null ? '' : file + at,
    capture === null ? '' : `capture "${capture}"`,
  ];
  return parts.filter((part) => part !== '').join(', ') || 'collection';
}

/** The whole sentence: `plate "harbour", plate.md line 12: "procces" is not a known field. ...` */
export function findingText(finding: Finding): string {
  return `${findingPlace(finding)}: ${finding.message} ${finding.remedy}`.trimEnd();
}
