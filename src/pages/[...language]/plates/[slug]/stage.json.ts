/** What the viewer has to know of one plate, for showing it beside another one. */
import type { APIRoute } from 'astro';
import { publishedPlates, type PublishedPlate } from '../../../../components/exhibit.ts';
import { inEachLanguage, speechOf } from '../../../../components/speech.ts';
import { stagePlace } from '../../../../components/viewer/stage-place.ts';
import { stageData } from '../../../../viewer/stage-data.ts';

export async function getStaticPaths() {
  const plates = (await publishedPlates()).filter(({ record }) => record.advisory === undefined);
  return inEachLanguage(
    plates.map((plate) => ({ params: { slug: plate.slug }, props: { plate } })),
  );
}

export const GET: APIRoute<{ plate: PublishedPlate }> = async ({ params, props: { plate } }) => {
  const data = stageData(plate.result, plate.record, stagePlace(await speechOf({ params })));
  return new Response(JSON.stringify(data), { headers: { 'content-type': 'application/json' } });
};
