/**
 * Places of a bracket from which a response can be told: even in every frame, so that neither an
 * edge nor a small movement speaks, and spread over all brightnesses.
 */

/** Brightness classes that get the same number of places. */
const classes = 16;

export interface EvenPlaces {
  /**
   * Look at one place: codes of 0 to 255 of a 3 x 3 neighbourhood in every frame.
   *
   * @param means Mean of each frame. @param spread Largest difference within any frame's nine.
   */
  readonly offer: (means: readonly number[], spread: number) => void;
  /** Chosen places, rounded to codes. */
  readonly chosen: () => Uint8Array[];
}

/** @param wanted Places in all. @param evenness Largest spread within a neighbourhood, codes. */
export function evenPlaces(wanted: number, evenness = 12): EvenPlaces {
  const each = Math.ceil(wanted / classes);
  const lists = Array.from(
    { length: classes },
    () => [] as { codes: Uint8Array; spread: number }[],
  );
  return {
    offer(means, spread) {
      if (spread > evenness) return;
      const brightness = means.reduce((a, b) => a + b) / means.length;
      const list = lists[Math.min(classes - 1, Math.floor((brightness / 256) * classes))];
      if (list.length >= 2 * each) {
        if (spread >= list[each - 1].spread) return;
        list.length = each;
      }
      list.push({ codes: Uint8Array.from(means, (m) => Math.round(m)), spread });
      if (list.length === 2 * each) list.sort((a, b) => a.spread - b.spread);
    },
    chosen: () =>
      lists.flatMap((list) =>
        list
          .sort((a, b) => a.spread - b.spread)
          .slice(0, each)
          .map(({ codes }) => codes),
      ),
  };
}
