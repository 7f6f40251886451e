/** The paths of a kind of page that every plate has, each with the key of its inputs. */
import { publishedPlates, type PublishedPlate } from './exhibit.ts';
import { pageKey } from './page-key.ts';

export async function platePaths(wanted: (plate: PublishedPlate) => boolean = () => true) {
  const plates = await publishedPlates();
  return Promise.all(
    plates.filter(wanted).map(async (plate) => ({
      params: { slug: plate.slug },
      props: { plate, plates },
      cacheKey: await pageKey(plate.slug),
    })),
  );
}
