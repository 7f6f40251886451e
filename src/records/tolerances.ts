/**
 * What a measurement is compared with. Published tables are named by edition and carry their
 * status: only a table that was itself seen may be quoted as such. Everything else is a limit
 * of ours, with its source or the words "common practice, no source".
 *
 * No result of this program claims conformance to any standard: a flat target says nothing
 * about a mirror, and a standard asks for more than these figures.
 */
import { z } from 'zod';
import tables from './tolerances.json' with { type: 'json' };

const figureSchema = z.strictObject({
  unit: z.string(),
  /** Which side of the figure is good. */
  sense: z.enum(['at-least', 'above', 'at-most', 'below', 'within']),
  /** One figure for each level of the edition, the least demanding first. */
  values: z.array(z.union([z.number(), z.tuple([z.number(), z.number()])])),
  note: z.string().optional(),
});
export type Figure = z.output<typeof figureSchema>;

const editionSchema = z.strictObject({
  title: z.string(),
  source: z.string(),
  /** `seen`: taken from the edition itself; `second-hand`: from texts that quote it. */
  status: z.enum(['seen', 'second-hand']),
  levels: z.array(z.string()).min(1),
  figures: z.record(z.string(), figureSchema),
});
export type Edition = z.output<typeof editionSchema>;

const limitSchema = z.strictObject({ value: z.number(), unit: z.string(), source: z.string() });

export const tolerancesSchema = z.strictObject({
  editions: z.record(z.string(), editionSchema),
  /** Which edition findings quote, and the level below which there is a finding. */
  aim: z.strictObject({ edition: z.string(), level: z.string() }),
  limits: z.record(z.string(), limitSchema),
});
export type Tolerances = z.output<typeof tolerancesSchema>;

/** The tables that come with the program. */
export const tolerances: Tolerances = tolerancesSchema.parse(tables);

/** A limit of ours. @throws RangeError when there is none of that name: a fault of the program. */
export function limit(given: Tolerances, name: string): z.output<typeof limitSchema> {
  const found = given.limits[name] as z.output<typeof limitSchema> | undefined;
  if (!found) throw new RangeError(`There is no limit "${name}" in the tolerances.`);
  return found;
}

/** How a value stands against the table aimed at. */
export interface Standing {
  readonly edition: Edition;
  readonly figure: Figure;
  /** The most demanding level whose figure the value meets; null when it meets none. */
  readonly level: string | null;
  /** Whether the level aimed at is met. */
  readonly asAimed: boolean;
  /** `within the 3-star figure for evenness (below 3 %)`. */
  readonly sentence: string;
  /** The figure aimed at, `below 5 % (2-star)`. */
  readonly expected: string;
}

/** Compare a value with the edition aimed at; null where that edition has no such figure. */
export function standingOf(given: Tolerances, quantity: string, value: number): Standing | null {
  const edition = given.editions[given.aim.edition] as Edition | undefined;
  const figure = edition?.figures[quantity];
  if (!edition || !figure) return null;
  const wanted = edition.levels.indexOf(given.aim.level);
  if (wanted < 0) {
    throw new RangeError(`"${edition.title}" has no level "${given.aim.level}".`);
  }
  const reached = figure.values.findLastIndex((_, k) => meets(figure, k, value));
  const name = quantity.replaceAll('-', ' ');
  const sentence =
    reached < 0
      ? `outside the ${edition.levels[0]} figure for ${name} (${figureText(figure, 0)})`
      : `within the ${edition.levels[reached]} figure for ${name} (${figureText(figure, reached)})`;
  return {
    edition,
    figure,
    level: reached < 0 ? null : edition.levels[reached],
    asAimed: reached >= wanted,
    sentence,
    expected: `${figureText(figure, wanted)} (${edition.levels[wanted]})`,
  };
}

/** The title with which a finding names its table; second-hand tables say so. */
export function editionName({ title, status }: Edition): string {
  return status === 'seen' ? title : `${title} (as quoted by others)`;
}

function meets({ sense, values }: Figure, level: number, value: number): boolean {
  const figure = values[level];
  if (Array.isArray(figure)) return value >= figure[0] && value <= figure[1];
  switch (sense) {
    case 'at-least':
      return value >= figure;
    case 'above':
      return value > figure;
    case 'at-most':
      return value <= figure;
    case 'below':
      return value < figure;
    case 'within':
      throw new RangeError('A figure to lie within needs two ends.');
  }
}

const senseWords = {
  'at-least': 'at least',
  above: 'above',
  'at-most': 'at most',
  below: 'below',
  within: 'within',
} as const;

function figureText({ sense, values, unit }: Figure, level: number): string {
  const figure = values[level];
  const number = Array.isArray(figure) ? figure.join(' to ') : String(figure);
  return `${senseWords[sense]} ${number}${unit === '' ? '' : ` ${unit}`}`;
}
