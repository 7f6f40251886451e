/** What the planner is told on the command line: from a sitting, then from the options. */
import { proposedSizes } from './sitting-input.ts';
import {
  exampleInput,
  planLimits,
  type PlanField,
  type PlanInput,
} from '../../optics/plan/plan-input.ts';
import { textOption, type Given } from '../command.ts';
import { WrongUse } from '../wrong-use.ts';

export interface GivenPlan {
  readonly input: PlanInput;
  /** Sentences on where the numbers come from. */
  readonly notes: readonly string[];
}

/** @throws WrongUse for what is no number, or a plate that is not there. */
export async function planInputOf(
  given: Given,
  optionName: (field: string) => string,
): Promise<GivenPlan> {
  const from = textOption(given, 'from');
  const base = from === undefined ? null : await proposedSizes(from, textOption(given, 'content'));
  const own: Partial<Record<PlanField, number>> = {};
  for (const field of Object.keys(planLimits) as PlanField[]) {
    const name = optionName(field);
    const text = textOption(given, name);
    if (text === undefined) continue;
    const value = text.trim() === '' ? NaN : Number(text);
    const [least, most] = planLimits[field];
    if (!(value >= least && value <= most)) {
      throw new WrongUse(
        `--${name} takes a number from ${least} to ${most}, but was given "${text}".`,
      );
    }
    own[field] = value;
  }
  const usual = (Object.keys(planLimits) as PlanField[]).filter(
    (field) => base?.input[field] === undefined && own[field] === undefined,
  );
  return {
    input: { ...exampleInput, ...base?.input, ...own },
    notes: [
      ...(base?.notes ?? []),
      `Taken as usual, since not given: ${usual.map(optionName).join(', ')}.`,
    ],
  };
}
