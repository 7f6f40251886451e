/** Hands the plates to pages that are shown while a person edits them: as they are now. */
import type { Places } from '../pipeline/places.ts';
import { handOver } from '../publish/published-plates.ts';
import { exhibitPlates, type ExhibitPlates } from './exhibit-plates.ts';
import { handContent } from './handed-content.ts';

/** One page asks for the plates many times. */
const freshMilliseconds = 500;

export async function showPlates(places: Places): Promise<void> {
  let asked = 0;
  let last: Promise<ExhibitPlates> | undefined;
  const now = (): Promise<ExhibitPlates> => {
    if (last && performance.now() - asked < freshMilliseconds) return last;
    asked = performance.now();
    last = exhibitPlates(places);
    return last;
  };
  handContent((await now()).content);
  handOver({
    plates: async () => (await now()).plates,
    isMade: () => true,
    // Somebody may be working on the component.
    cellOf: (_language, _slug, render) => render(),
  });
}
