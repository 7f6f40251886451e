/** Findings as a person reads them at the stand: by plate, by capture, the remedy below each. */
import type { Finding } from '../../records/finding.ts';
import { printable } from '../../records/printable.ts';
import type { InspectSummary } from './inspect-plates.ts';
import { measuredTable } from './measured-table.ts';

const order = { error: 0, warning: 1, note: 2 } as const;

/** Lines of text, at most `width` columns wide. */
export function findingsTable({ collection, plates }: InspectSummary, width = 100): string {
  const parts = [
    ...(collection.length > 0 ? [group('The collection', collection, width)] : []),
    ...plates.map(({ slug, findings, inspections, registrations }) =>
      [
        findings.length > 0 ? group(slug, findings, width) : `${slug}\n  No findings.`,
        measuredTable(inspections, registrations),
      ]
        .filter((block) => block !== '')
        .join('\n\n'),
    ),
    summary(collection, plates),
  ];
  return printable(parts.join('\n\n'));
}

function group(title: string, findings: readonly Finding[], width: number): string {
  const captures = [...new Set(findings.map((f) => f.capture))];
  // What is about the plate as a whole comes first; captures keep the order of the sitting.
  captures.sort((a, b) => Number(a !== null) - Number(b !== null));
  const blocks = captures.map((capture) => {
    const own = findings
      .filter((f) => f.capture === capture)
      .sort((a, b) => order[a.level] - order[b.level]);
    return [`  ${capture ?? 'the plate'}`, ...own.map((f) => entry(f, width))].join('\n');
  });
  return [title, ...blocks].join('\n');
}

function entry(
  { level, code, file, line, message, remedy, edition }: Finding,
  width: number,
): string {
  const place = file === null ? '' : ` ${line === null ? file : `${file}, line ${line}`}`;
  const head = `    ${level.padEnd(8)}${code}${place}`;
  const source = edition === null ? '' : ` [${edition}]`;
  return [
    head,
    ...wrapped(`${message}${source}`, 12, width),
    ...wrapped(`→ ${remedy}`, 12, width),
  ].join('\n');
}

/** Words broken into lines that start with `indent` blanks. */
function wrapped(text: string, indent: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line !== '' && indent + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((l) => ' '.repeat(indent) + l);
}

function summary(
  collection: InspectSummary['collection'],
  plates: InspectSummary['plates'],
): string {
  const all = [...collection, ...plates.flatMap((p) => p.findings)];
  const count = (level: Finding['level'], one: string) => {
    const n = all.filter((f) => f.level === level).length;
    return `${n} ${one}${n === 1 ? '' : 's'}`;
  };
  const clean = plates.filter((p) => p.findings.length === 0).length;
  return `${plates.length} plates inspected, ${clean} without findings: ${count('error', 'error')}, ${count('warning', 'warning')}, ${count('note', 'note')}.`;
}
