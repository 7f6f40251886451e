/**
 * Spots and steps of guided looks that show a capture which the museum withholds: they are no
 * more published than it is. An overlay names the same parts by id and place, without the
 * capture, so both are freed of them by one list.
 */
import type { PlateRecord } from './plate.ts';

export interface VeiledParts {
  /** Ids. */
  readonly spots: ReadonlySet<string>;
  /** Places of the steps that show it, by the look's id. */
  readonly steps: ReadonlyMap<string, ReadonlySet<number>>;
  /** Ids of looks that have no other steps. */
  readonly looks: ReadonlySet<string>;
}

/** What a record and its translations have of such parts. */
interface Texts {
  readonly spots?: readonly { readonly id: string }[] | undefined;
  readonly looks?:
    readonly { readonly id: string; readonly steps?: readonly object[] | undefined }[] | undefined;
}

export function veiledParts({
  spots,
  looks,
  withheld,
}: Pick<PlateRecord, 'spots' | 'looks' | 'withheld'>): VeiledParts {
  const hidden = new Set(withheld);
  const hiddenSpots = new Set(
    spots.flatMap(({ id, view }) => (view !== undefined && hidden.has(view) ? id : [])),
  );
  const steps = new Map(
    looks.map((look) => [
      look.id,
      new Set(
        look.steps.flatMap(({ of, spot }, n) =>
          of.some((id) => hidden.has(id)) || (spot !== undefined && hiddenSpots.has(spot)) ? n : [],
        ),
      ),
    ]),
  );
  const whole = looks.filter((look) => steps.get(look.id)?.size === look.steps.length);
  return { spots: hiddenSpots, steps, looks: new Set(whole.map(({ id }) => id)) };
}

/** A record, or a translation of it, without them. */
export function withoutVeiled<T extends Texts>(texts: T, veiled: VeiledParts): T {
  const { spots, looks } = texts;
  return {
    ...texts,
    ...(spots && { spots: spots.filter(({ id }) => !veiled.spots.has(id)) }),
    ...(looks && {
      looks: looks
        .filter(({ id }) => !veiled.looks.has(id))
        .map((look) => ({
          ...look,
          ...(look.steps && {
            steps: look.steps.filter((_, n) => !veiled.steps.get(look.id)?.has(n)),
          }),
        })),
    }),
  };
}
