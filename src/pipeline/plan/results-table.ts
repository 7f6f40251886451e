/** A plan as a table for a terminal. The words come from the planner. */
import type { Plan, PlanFigure, PlanSectionId, PlanWarning } from '../../optics/plan/plan.ts';

export interface PlanWords {
  readonly words: {
    readonly sections: Readonly<Record<PlanSectionId, string>>;
    readonly figures: Readonly<Record<string, string>>;
    readonly cautionsTitle: string;
    readonly cautions: readonly string[];
    readonly warnings: string;
  };
  readonly value: (value: PlanFigure['value'], unit: PlanFigure['unit']) => string;
  readonly warning: (warning: PlanWarning) => string;
}

export function resultsTable(plan: Plan, notes: readonly string[], said: PlanWords): string {
  const { words } = said;
  const widest = Math.max(
    ...plan.sections.flatMap(({ figures }) => figures.map(({ id }) => words.figures[id].length)),
  );
  const parts = plan.sections.map(({ id, figures }) => {
    const rows = figures.map(
      (f) => `  ${words.figures[f.id].padEnd(widest)}  ${said.value(f.value, f.unit)}`,
    );
    return [words.sections[id], ...rows].join('\n');
  });
  const warnings = plan.warnings.map(
    (warning) => `  - ${words.sections[warning.section]}: ${said.warning(warning)}`,
  );
  return [
    notes.join('\n'),
    ...parts,
    ...(warnings.length > 0 ? [[words.warnings, ...warnings].join('\n')] : []),
    [words.cautionsTitle, ...words.cautions.map((caution) => `  - ${caution}`)].join('\n'),
  ].join('\n\n');
}
