/** What an import did and what it did not understand, for a person. */
import type { RegisterReport } from './import-register.ts';

/** Differences and problems that are shown one by one; the rest is counted. */
const mostShown = 200;

const brief = (value: unknown) => {
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};

export function registerReportText(report: RegisterReport, dryRun: boolean): string {
  const { rows, made, same, differing, refused, problems, unmapped, absent } = report;
  const made_ = dryRun ? 'would be made' : 'made';
  const shown = problems.slice(0, mostShown).map(({ line, column, found, expected }) => {
    const where = column === '' ? `line ${line}` : `line ${line}, ${column}`;
    return column === ''
      ? `  ${where}: ${found}`
      : `  ${where}: "${brief(found)}"; expected ${expected}`;
  });
  const changes = differing.flatMap(({ slug, differences }) =>
    differences.map(({ field, register, plate }) => {
      const now = plate === null ? 'nothing yet' : `"${brief(plate)}"`;
      return `  ${slug}, ${field}: register "${brief(register)}", plate.md ${now}`;
    }),
  );
  const more = (list: readonly unknown[]) =>
    list.length > mostShown ? [`  and ${list.length - mostShown} more`] : [];
  return [
    `${rows} rows: ${made.length} plates ${made_}, ${same.length} as the register has them, ` +
      `${differing.length} that differ, ${refused.length} rows refused.`,
    ...(absent.length > 0
      ? [`Columns that the register does not have: ${absent.join(', ')}.`]
      : []),
    ...(unmapped.length > 0
      ? [`Columns that the mapping leaves out: ${unmapped.join(', ')}.`]
      : []),
    ...(changes.length > 0
      ? [
          'Different from what was written (nothing was changed; decide each by hand):',
          ...changes.slice(0, mostShown),
          ...more(changes),
        ]
      : []),
    ...(problems.length > 0 ? ['Not understood, and left out:', ...shown, ...more(problems)] : []),
  ].join('\n');
}
