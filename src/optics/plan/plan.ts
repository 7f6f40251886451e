/** What a plan is made of: numbers with their units under a heading, and warnings. No words. */

export type PlanUnit =
  | 'mm'
  | 'µm'
  | '°'
  | 'stops'
  | 'px'
  | 'px/mm'
  | 'ppi'
  | 'lp/mm'
  | '%'
  | 'f/'
  | 's'
  | 'lx h'
  | 'h'
  | '';

export interface PlanFigure {
  /** Word for the figure; its label and formula stand in the planner's words. */
  readonly id: string;
  /** One number, or the numbers of a size or a series. */
  readonly value: number | readonly number[];
  readonly unit: PlanUnit;
}

export interface PlanSection {
  readonly id: PlanSectionId;
  readonly figures: readonly PlanFigure[];
}

export const planSectionIds = [
  'camera',
  'dark',
  'lamp',
  'raking',
  'axial',
  'bracket',
  'lights',
  'dose',
] as const;
export type PlanSectionId = (typeof planSectionIds)[number];

export interface PlanWarning {
  readonly id: string;
  readonly section: PlanSectionId;
  /** Numbers that its sentence needs. */
  readonly values: readonly number[];
}

/** A set-up as `sitting.yaml` has it. */
export interface PlannedSetup {
  readonly kind: 'normal' | 'raking' | 'axial';
  readonly surround: 'dark' | 'bright';
  readonly lamps: readonly {
    readonly bearing: number;
    readonly height: number;
    readonly distance: number;
    readonly size: number;
    readonly diffuser?: number;
  }[];
  readonly glass?: { readonly index: number; readonly thickness: number; readonly angle: number };
}

export interface Plan {
  readonly sections: readonly PlanSection[];
  readonly warnings: readonly PlanWarning[];
  readonly setups: Readonly<Record<string, PlannedSetup>>;
}

/** One section with what it warns of. */
export interface SectionPlan {
  readonly section: PlanSection;
  readonly warnings: readonly PlanWarning[];
}

export function figure(id: string, value: PlanFigure['value'], unit: PlanUnit): PlanFigure {
  return { id, value, unit };
}

/** The section with its warnings: those whose condition holds. */
export function sectionPlan(
  id: PlanSectionId,
  figures: readonly PlanFigure[],
  warnings: readonly (readonly [id: string, holds: boolean, ...values: number[]])[],
): SectionPlan {
  return {
    section: { id, figures },
    warnings: warnings
      .filter(([, holds]) => holds)
      .map(([name, , ...values]) => ({ id: name, section: id, values })),
  };
}
