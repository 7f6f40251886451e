/** The paths of a kind of page that every plate has, for the plates whose pages are made now. */
import { handedOver, type PublishedPlate } from '../publish/published-plates.ts';

export async function platePaths(wanted: (plate: PublishedPlate) => boolean = () => true) {
  const handed = handedOver();
  const plates = await handed.plates();
  return plates
    .filter((plate) => handed.isMade(plate.slug) && wanted(plate))
    .map((plate) => ({ params: { slug: plate.slug }, props: { plate, plates } }));
}
